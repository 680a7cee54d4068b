/** Who says that something happens: each has a shape of its own. */
export type EventVoice = 'byModel' | 'byRule' | 'bySupply';

interface LaneEvent {
  /** Where along the picture it happens. */
  readonly x: number;
  readonly voice: EventVoice;
}

/** A mark of the lane: one event, or several in a row that have no room beside one another. Numbers count from 1. */
interface LaneMark {
  readonly from: number;
  readonly to: number;
  /** The middle of the mark. */
  readonly x: number;
  readonly width: number;
  readonly label: string;
  readonly voice: EventVoice;
}

const LEAST_WIDTH = 18;
const DIGIT = 7;
const RIM = 9;
const GAP = 3;
/** About as wide as a letter of the words beside a mark is drawn. */
const LETTER = 6.6;

const widthOf = (label: string) => Math.max(LEAST_WIDTH, label.length * DIGIT + RIM);

/** The marks of events in order of time, numbered from the one after `before`, in a lane `width` long: none lies over another. */
export function eventLane(events: readonly LaneEvent[], width: number, before = 0): readonly LaneMark[] {
  const marks = events.map(({ x, voice }, index) => marked(before + index + 1, before + index + 1, x, voice));
  while (marks.length > 1 && marks.reduce((sum, mark) => sum + mark.width + GAP, 0) > width) {
    let closest = 1;
    for (let i = 2; i < marks.length; i += 1)
      if (marks[i]!.x - marks[i - 1]!.x < marks[closest]!.x - marks[closest - 1]!.x) closest = i;
    const [one, other] = [marks[closest - 1]!, marks[closest]!];
    // What the model says is not lost among what else is told.
    const voice = [one.voice, other.voice].includes('byModel') ? 'byModel' : one.voice;
    marks.splice(closest - 1, 2, marked(one.from, other.to, (one.x + other.x) / 2, voice));
  }
  let least = 0;
  const placed = marks.map((mark) => {
    const x = Math.max(mark.x, least + mark.width / 2);
    least = x + mark.width / 2 + GAP;
    return { ...mark, x };
  });
  let most = width;
  for (const mark of placed.reverse()) {
    mark.x = Math.min(mark.x, most - mark.width / 2);
    most = mark.x - mark.width / 2 - GAP;
  }
  return placed.reverse();
}

function marked(from: number, to: number, x: number, voice: EventVoice): LaneMark {
  const label = from === to ? `${from}` : `${from}–${to}`;
  return { from, to, x, width: widthOf(label), label, voice };
}

/** Which of the marks have room for their word before the next one begins, or the lane ends. */
export function roomForWords(marks: readonly LaneMark[], words: readonly string[], width: number): readonly boolean[] {
  return marks.map((mark, index) => {
    const end = marks[index + 1] ? marks[index + 1]!.x - marks[index + 1]!.width / 2 - 2 * GAP : width;
    return mark.from === mark.to && mark.x + mark.width / 2 + 4 + words[index]!.length * LETTER <= end;
  });
}

import { quoted } from '../../quantity/parsed';
import { LONGEST_S, SHORTEST_S } from '../bounds';
import type { Step } from '../dive';
import { FASTEST_M_MIN, legDurationS, legRateMMin } from './leg-rate';
import { noticeAt, type Notice } from './notice';
import type { LineRead, Span, StepRead } from './line';

type StepLineRead = Extract<LineRead, { as: 'step' }>;
type LegRead = Extract<StepRead, { kind: 'descend' | 'ascend' }>;

/** A step of the dive, the line it stands on and the depth it begins at. */
export interface WalkedStep {
  readonly step: Step;
  readonly lineIndex: number;
  readonly fromM: number;
}

/** Where the diver is, in metres and as the script put it; unknown after a line that could not be read. */
interface Place {
  readonly depthM: number | undefined;
  readonly words: string;
}

const SURFACED: Place = { depthM: 0, words: 'the surface' };
const UNKNOWN: Place = { depthM: undefined, words: '' };

/** Goes through the steps of a script in order, following the depth; what is wrong goes to the errors. */
export function walkSteps(texts: readonly string[], lines: readonly LineRead[], errors: Notice[]): WalkedStep[] {
  const steps: WalkedStep[] = [];
  let place = SURFACED;
  let lastLine = -1;
  let totalS = 0;
  lines.forEach((read, lineIndex) => {
    if (read.as !== 'step' && read.as !== 'unknown') return;
    const complain = (span: Span, what: string, mend: string) => errors.push(noticeAt(lineIndex, { span, what, mend }));
    for (const { span, what, mend } of read.troubles) complain(span, what, mend);
    lastLine = lineIndex;
    if (read.as === 'unknown') {
      place = UNKNOWN;
      return;
    }
    const before = place;
    place = placeAfter(read.step, before, texts[lineIndex]!);
    const step = read.troubles.length === 0 ? meaning(read, before, complain) : undefined;
    if (!step) return;
    const wasWithin = totalS <= LONGEST_S;
    totalS += 'durationS' in step ? step.durationS : 0;
    if (wasWithin && totalS > LONGEST_S)
      complain(read.body, 'The script is longer than the week this model follows.', 'Shorten it to 7 days in all.');
    if (before.depthM !== undefined) steps.push({ step, lineIndex, fromM: before.depthM });
  });
  if (place.depthM) errors.push(endsBelow(place, texts[lastLine]!, lines[lastLine]!, lastLine));
  return steps;
}

function placeAfter(step: StepRead, before: Place, text: string): Place {
  if (step.kind === 'interval') return SURFACED;
  if (step.kind !== 'descend' && step.kind !== 'ascend') return before;
  const depthM = step.depthM?.value;
  if (depthM === undefined) return UNKNOWN;
  return depthM === 0 ? SURFACED : { depthM, words: text.slice(...step.depthM!.span) };
}

type Complain = (span: Span, what: string, mend: string) => void;

function meaning({ step, verb }: StepLineRead, before: Place, complain: Complain): Step | undefined {
  switch (step.kind) {
    case 'stay':
      return { kind: 'stay', durationS: step.timeS.value! };
    case 'switch':
      return { kind: 'switch', gas: { ...step.gas.value! } };
    case 'interval':
      if (before.depthM)
        complain(
          verb,
          `The diver is at ${before.words}, and an interval is at the surface.`,
          'Put “ascend to surface at 9 m/min” before it.',
        );
      return { kind: 'interval', durationS: step.timeS.value! };
    case 'descend':
    case 'ascend':
      return legMeaning(step, before, complain);
  }
}

function legMeaning({ kind, depthM: depth, speed }: LegRead, before: Place, complain: Complain): Step | undefined {
  const toM = depth!.value!;
  if (before.depthM === undefined) return undefined;
  const fromM = before.depthM;
  if (toM === fromM) {
    complain(
      depth!.span,
      `The diver is at ${before.words} already.`,
      'Write “stay” and a time to wait there, or leave this line out.',
    );
    return undefined;
  }
  if (toM > fromM !== (kind === 'descend')) {
    const wrong = kind === 'descend' ? 'deeper than this descent goes' : 'not as deep as this ascent ends';
    complain(
      depth!.span,
      `The diver is at ${before.words}, ${wrong}.`,
      `Write ${quoted(kind === 'descend' ? 'ascend' : 'descend')} to go there, or another depth.`,
    );
    return undefined;
  }
  const { value } = speed!;
  const durationS = value!.by === 'time' ? value!.s : legDurationS(fromM, toM, value!.mMin);
  if (durationS < SHORTEST_S) {
    complain(
      depth!.span,
      `The diver is at ${before.words}, and a change of depth as small as this is over in no time.`,
      'Write a depth further from it, or leave this line out.',
    );
    return undefined;
  }
  const rate = legRateMMin(fromM, toM, durationS);
  if (rate > FASTEST_M_MIN * (1 + 1e-6)) {
    complain(
      speed!.span,
      `That is ${Math.round(rate)} m/min, faster than this model takes.`,
      `Give it more time: at most ${FASTEST_M_MIN} m/min.`,
    );
  }
  return { kind, toM, durationS };
}

/** Stands at the last word, where more is wanted, and so behind whatever else is wrong with that line. */
function endsBelow(place: Place, text: string, read: LineRead, lineIndex: number): Notice {
  const [from, to] = read.as === 'step' ? read.body : ([0, 1] as const);
  const span = [from + text.slice(from, to).lastIndexOf(' ') + 1, to] as const;
  return noticeAt(lineIndex, {
    span,
    what: `The script ends with the diver at ${place.words}.`,
    mend: 'Add “ascend to surface at 9 m/min” at the end.',
  });
}

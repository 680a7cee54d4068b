import { quoted } from '../../quantity/parsed';
import { LONGEST_S, SHORTEST_S } from '../bounds';
import type { Settings, Step } from '../dive';
import { FASTEST_M_MIN, leastLegS, legDurationS, legRateMMin } from './leg-rate';
import { noticeAt, type Notice } from './notice';
import type { UnitSystem } from '../../quantity/unit-system';
import { isSurfaceVerb, timeLike, turned } from './edit-words';
import type { Fix, LineRead, Span, StepRead } from './line';
import { insertedLine } from './mend';
import { plannedRateMMin, writePlannedRate } from './settings/plan-rates';

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
export function walkSteps(
  texts: readonly string[],
  lines: readonly LineRead[],
  plan: Settings['plan'],
  system: UnitSystem,
  errors: Notice[],
): WalkedStep[] {
  const wayUp = `ascend to surface at ${writePlannedRate('ascend', plan, system)}`;
  const steps: WalkedStep[] = [];
  let place = SURFACED;
  let lastLine = -1;
  let totalS = 0;
  lines.forEach((read, lineIndex) => {
    if (read.as !== 'step' && read.as !== 'unknown') return;
    const text = texts[lineIndex]!;
    const complain: Complain = (span, what, mend, fixes) => {
      errors.push(noticeAt(lineIndex, { span, what, mend, fixes }));
    };
    for (const trouble of read.troubles) errors.push(noticeAt(lineIndex, trouble));
    lastLine = lineIndex;
    if (read.as === 'unknown') {
      place = UNKNOWN;
      return;
    }
    const before = place;
    place = placeAfter(read.step, before, text);
    if (read.step.kind === 'interval' && before.depthM && read.troubles.length === 0)
      errors.push(notAtSurface(read.verb, before, lineIndex, wayUp));
    const step = read.troubles.length === 0 ? meaning(read, text, before, plan, complain) : undefined;
    if (!step) return;
    const wasWithin = totalS <= LONGEST_S;
    totalS += 'durationS' in step ? step.durationS : 0;
    if (wasWithin && totalS > LONGEST_S)
      complain(read.body, 'The script is longer than the week this model follows.', 'Shorten it to 7 days in all.');
    if (before.depthM !== undefined) steps.push({ step, lineIndex, fromM: before.depthM });
  });
  if (place.depthM) errors.push(endsBelow(place, texts[lastLine]!, lines[lastLine]!, lastLine, wayUp));
  return steps;
}

function placeAfter(step: StepRead, before: Place, text: string): Place {
  if (step.kind === 'interval') return SURFACED;
  if (step.kind !== 'descend' && step.kind !== 'ascend') return before;
  const depthM = step.depthM?.value;
  if (depthM === undefined) return UNKNOWN;
  return depthM === 0 ? SURFACED : { depthM, words: text.slice(...step.depthM!.span) };
}

type Complain = (span: Span, what: string, mend: string, fixes?: readonly Fix[]) => void;

function meaning(
  read: StepLineRead,
  text: string,
  before: Place,
  plan: Settings['plan'],
  complain: Complain,
): Step | undefined {
  const { step } = read;
  switch (step.kind) {
    case 'stay':
      return { kind: 'stay', durationS: step.timeS.value! };
    case 'switch':
      return { kind: 'switch', gas: { ...step.gas.value! } };
    case 'interval':
      return { kind: 'interval', durationS: step.timeS.value! };
    case 'descend':
    case 'ascend':
      return legMeaning(step, read, text, before, plan, complain);
  }
}

function legMeaning(
  { kind, depthM: depth, speed }: LegRead,
  { verb, body }: StepLineRead,
  text: string,
  before: Place,
  plan: Settings['plan'],
  complain: Complain,
): Step | undefined {
  const toM = depth!.value!;
  if (before.depthM === undefined) return undefined;
  const fromM = before.depthM;
  if (toM === fromM) {
    complain(
      depth!.span,
      `The diver is at ${before.words} already.`,
      'Write “stay” and a time to wait there, or leave this line out.',
      [{ span: body, text: '', label: 'Leave this line out' }],
    );
    return undefined;
  }
  if (toM > fromM !== (kind === 'descend')) {
    const wrong = kind === 'descend' ? 'deeper than this descent goes' : 'not as deep as this ascent ends';
    complain(
      depth!.span,
      `The diver is at ${before.words}, ${wrong}.`,
      `Write ${quoted(kind === 'descend' ? 'ascend' : 'descend')} to go there, or another depth.`,
      isSurfaceVerb(text.slice(...verb)) ? undefined : [{ span: verb, text: turned(text.slice(...verb)) }],
    );
    return undefined;
  }
  const value = speed?.value ?? ({ by: 'rate', mMin: plannedRateMMin(kind, plan) } as const);
  const durationS = value.by === 'time' ? value.s : legDurationS(fromM, toM, value.mMin);
  if (durationS < SHORTEST_S) {
    complain(
      depth!.span,
      `The diver is at ${before.words}, and a change of depth as small as this is over in no time.`,
      'Write a depth further from it, or leave this line out.',
      [{ span: body, text: '', label: 'Leave this line out' }],
    );
    return undefined;
  }
  const rate = legRateMMin(fromM, toM, durationS);
  if (rate > FASTEST_M_MIN * (1 + 1e-6)) {
    complain(
      speed?.span ?? body,
      `That is ${Math.round(rate)} m/min, faster than this model takes.`,
      `Give it more time: at most ${FASTEST_M_MIN} m/min.`,
      speed && [{ span: speed.span, text: timeLike(text.slice(...speed.span), leastLegS(fromM, toM)) }],
    );
  }
  return { kind, toM, durationS };
}

/** Stands at the last word, where more is wanted, and so behind whatever else is wrong with that line. */
function endsBelow(place: Place, text: string, read: LineRead, lineIndex: number, wayUp: string): Notice {
  const [from, to] = read.as === 'step' ? read.body : ([0, 1] as const);
  const span = [from + text.slice(from, to).lastIndexOf(' ') + 1, to] as const;
  return noticeAt(lineIndex, {
    span,
    what: `The script ends with the diver at ${place.words}.`,
    mend: `Add “${wayUp}” at the end.`,
    fixes: [{ span: [text.length, text.length], text: `\n${wayUp}`, label: wayUp }],
  });
}

function notAtSurface(verb: Span, before: Place, lineIndex: number, wayUp: string): Notice {
  return {
    ...noticeAt(lineIndex, {
      span: verb,
      what: `The diver is at ${before.words}, and an interval is at the surface.`,
      mend: `Put “${wayUp}” before it.`,
    }),
    mends: [{ label: wayUp, edits: [insertedLine(lineIndex + 1, wayUp)] }],
  };
}

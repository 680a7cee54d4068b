import { figuresOf } from '../ascent/figures';
import { setStepDepth, setStepDuration } from '../dive/edit';
import type { Leg } from '../dive/legs';
import { parseScript } from '../dive/script';
import { computeTimeline, sampleAt, type Timeline } from '../dive/timeline';
import { workingFor, type ReadingId } from './all';
import type { Instant } from './instant';
import { REMARKS } from './remarks';
import type { SymbolName, Working } from './working';

/** Where the changed dive is sampled besides its changes and the moment asked for, s: its figures don't depend on it. */
const SPARSE_S = 600;

/**
 * The working of a reading as it would be with another number in a step of the script: the dive is worked out anew, the
 * stay with its depth, and asked at the same moment of the same step. Undefined where a symbol is no step's number, or the
 * script is not the dive's or can't say the change.
 */
export function workingOfChangedDive(
  reading: ReadingId,
  script: string,
  { timeline, sample }: Pick<Instant, 'timeline' | 'sample'>,
  symbol: SymbolName,
  value: number,
): Working | undefined {
  const change = changeOf(script, timeline, sample, symbol, value);
  const parsed = change && parseScript(change.script);
  if (!change || !parsed?.ok) return undefined;
  // The edit was not made: the script has no words for it.
  if (change.script === script && change.intoLegS === intoLegOf(timeline, sample)) return undefined;
  const legs = computeTimeline(parsed.dive, SPARSE_S, { intervalEveryS: SPARSE_S }).legs;
  const leg = legs[timeline.leg[sample]!];
  if (legs.length !== timeline.legs.length || !leg) return undefined;
  const nowS = Math.min(leg.endS, leg.startS + change.intoLegS);
  const changed = computeTimeline(parsed.dive, SPARSE_S, { alsoEveryS: nowS > 0 ? [nowS] : [] });
  const figures = figuresOf(changed, parsed.dive.settings);
  const working = workingFor(reading, changed, figures, sampleAt(changed, nowS + 1e-7));
  return { ...working, answer: { ...working.answer, text: REMARKS.whatIfDive } };
}

interface Change {
  readonly script: string;
  /** How long into its leg the moment then is, s. */
  readonly intoLegS: number;
}

/** The script with the number a symbol stands for changed: `d_3` and `d_3_end` where leg 3 begins and ends, `t_3` how long it takes. */
function changeOf(
  script: string,
  timeline: Timeline,
  sample: number,
  symbol: SymbolName,
  value: number,
): Change | undefined {
  const current = timeline.leg[sample]!;
  const intoLegS = intoLegOf(timeline, sample);
  const [, what, number, end] = /^([dt])(?:_(\d+)(_end)?)?$/.exec(symbol) ?? [];
  const index = number === undefined ? current : Number(number) - 1;
  const leg = timeline.legs[index];
  if (!what || !leg || index > current || leg.interval) return undefined;
  if (what === 't') {
    if (number === undefined) return undefined;
    const seconds = value * 60;
    if (index < current) return { script: setStepDuration(script, leg.step, seconds), intoLegS };
    // Of the step under way the time is that until now.
    if (!isStay(leg)) return undefined;
    const wholeS = Math.max(leg.endS - leg.startS, seconds);
    return { script: setStepDuration(script, leg.step, wholeS), intoLegS: seconds };
  }
  const ends = end !== undefined || isStay(leg) ? leg : timeline.legs[index - 1];
  // Where the diver is while the depth changes, no step says.
  if (!ends || ends.interval || (ends === leg && index === current && !isStay(leg))) return undefined;
  return { script: setStepDepth(script, ends.step, value), intoLegS };
}

function intoLegOf({ timeS, leg, legs }: Timeline, sample: number): number {
  return timeS[sample]! - legs[leg[sample]!]!.startS;
}

function isStay({ fromM, toM }: Leg): boolean {
  return fromM === toM;
}

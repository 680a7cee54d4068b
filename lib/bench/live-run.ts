import { printClock } from '../quantity/duration';
import { sayDepth } from '../quantity/depth';
import { fastestWithin, printRate, printRateLimit } from '../quantity/rate';
import type { UnitSystem } from '../quantity/unit-system';
import { legsOf, type Leg } from '../dive/legs';
import type { BenchSettings } from './bench-settings';
import type { ChamberRun, Checkpoint } from './chamber-run';

/** When each step of the run that takes time was begun, s on a clock of any kind; the last one is under way. */
export type Marks = readonly number[];

/** What a person at the chamber has to know at one moment. */
export interface LiveNow {
  /** The leg under way; -1 before the first, and the number of legs once the run is over. */
  readonly leg: number;
  readonly kind: 'ready' | 'in' | 'out' | 'hold' | 'over';
  /** Since the run began, and left of the leg as scripted, s; the latter below 0 once it is late. */
  readonly runS: number;
  readonly leftS: number;
  /** What the gauge should show at this moment, m. */
  readonly gaugeM: number;
  /** What to do, in one sentence. */
  readonly todo: string;
  /** The checkpoints to read at the end of the leg. */
  readonly checkpoints: readonly Checkpoint[];
  /** What is too fast, if anything. */
  readonly warning: string | undefined;
}

/** The legs of a run in order: one is begun with each mark of the clock. */
export function legsToRun(run: ChamberRun): readonly Leg[] {
  return legsOf(run.dive).legs;
}

/** Where a live run stands at a moment of the clock. */
export function liveAt(
  run: ChamberRun,
  settings: Pick<BenchSettings, 'fastestMMin'>,
  marks: Marks,
  nowS: number,
  system: UnitSystem,
): LiveNow {
  const legs = legsToRun(run);
  const index = marks.length - 1;
  const leg = legs[index];
  const runS = marks.length > 0 ? nowS - marks[0]! : 0;
  const common = {
    leg: index,
    runS,
    checkpoints: run.checkpoints.filter((one) => one.leg === index),
    warning: undefined,
  };
  if (index < 0)
    return {
      ...common,
      kind: 'ready',
      leftS: 0,
      gaugeM: 0,
      todo: `Close the chamber and zero the gauge. Then begin: ${instruction(legs[0]!, system)}`,
    };
  if (!leg)
    return {
      ...common,
      runS: marks.at(-1)! - marks[0]!,
      kind: 'over',
      leftS: 0,
      gaugeM: legs.at(-1)!.toM,
      todo: 'The run is over. Vent the chamber fully before you open it.',
    };
  const lengthS = leg.endS - leg.startS;
  const goneS = nowS - marks[index]!;
  const moving = leg.fromM !== leg.toM;
  const gaugeM = leg.interval ? 0 : leg.fromM + (leg.toM - leg.fromM) * Math.min(1, Math.max(0, goneS / lengthS));
  const kind = !moving ? 'hold' : leg.toM > leg.fromM ? 'in' : 'out';
  return {
    ...common,
    kind,
    leftS: lengthS - goneS,
    gaugeM,
    todo: instruction(leg, system),
    warning: scriptedTooFast(leg, settings, system) ?? tooFast(legs, marks, settings, system),
  };
}

function instruction(leg: Leg, system: UnitSystem): string {
  const lengthS = leg.endS - leg.startS;
  if (leg.interval) return `leave the chamber at surface pressure for ${printClock(lengthS)}.`;
  if (leg.fromM === leg.toM)
    return leg.toM === 0
      ? `stay at surface pressure for ${printClock(lengthS)}.`
      : `hold ${sayDepth(leg.toM, system)} on the gauge for ${printClock(lengthS)}.`;
  const way = leg.toM > leg.fromM ? 'raise the pressure' : 'let the pressure down';
  const to = leg.toM === 0 ? 'nothing' : sayDepth(leg.toM, system);
  return `${way} to ${to} on the gauge in ${printClock(lengthS)}, which is ${printRate(rateOf(leg, lengthS), system)}.`;
}

function rateOf({ fromM, toM }: Leg, overS: number): number {
  return (Math.abs(toM - fromM) * 60) / Math.max(overS, 0.5);
}

function scriptedTooFast(
  leg: Leg,
  { fastestMMin }: Pick<BenchSettings, 'fastestMMin'>,
  system: UnitSystem,
): string | undefined {
  const rate = rateOf(leg, leg.endS - leg.startS);
  if (fastestMMin === null || rate <= fastestWithin(fastestMMin) * (1 + 1e-9)) return undefined;
  return `This step asks for ${printRate(rate, system)}, and you state ${printRateLimit(fastestMMin, system)} at most. Go slower: the run takes the time you really take.`;
}

/** The change of pressure just ended, if it was faster than stated. */
function tooFast(
  legs: readonly Leg[],
  marks: Marks,
  { fastestMMin }: Pick<BenchSettings, 'fastestMMin'>,
  system: UnitSystem,
): string | undefined {
  const before = legs[marks.length - 2];
  if (!before || before.fromM === before.toM || fastestMMin === null) return undefined;
  const rate = rateOf(before, marks.at(-1)! - marks.at(-2)!);
  if (rate <= fastestWithin(fastestMMin) * (1 + 1e-9)) return undefined;
  return `The pressure changed at ${printRate(rate, system)}, faster than the ${printRateLimit(fastestMMin, system)} you state. Wait, and watch the chamber before you go on.`;
}

/** Nobody stands at a chamber for longer in one step, s. */
const LONGEST_HOLD_S = 24 * 3600;

/** How long the steps really took, s, by their index in the dive; undefined for those not over yet. */
export function tookOf(run: ChamberRun, marks: Marks): (number | undefined)[] {
  const took: (number | undefined)[] = run.dive.steps.map(() => undefined);
  legsToRun(run).forEach((leg, index) => {
    const end = marks[index + 1];
    // A step ended at once still takes some time. One that lasted for days was left alone, or the clock was set; it says no more than a day does.
    if (end !== undefined) took[leg.step] = Math.min(LONGEST_HOLD_S, Math.max(1, Math.round(end - marks[index]!)));
  });
  return took;
}

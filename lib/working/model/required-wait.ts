import { plannedAt } from '../../ascent/plan/ascent-start';
import { gradientFactorAt } from '../../ascent/ceiling';
import { ascentPlanner, type AscentPart, type Schedule } from '../../ascent/plan/schedule';
import { levelAbove, levelM } from '../../ascent/plan/stop-levels';
import { gasAt, tissuesAt } from '../../dive/timeline';
import { sameGas, type Gas } from '../../physics/gas';
import { limitBar, mixedCoefficient } from '../../tissue/limit';
import { emptyTissues } from '../../tissue/tissues';
import type { Instant } from '../instant';
import { tensionAfterLeg } from '../steps/leg-steps';
import { ALL_COMPARTMENTS } from '../../tissue/coefficients';

/** A wait that would be longer than this is taken never to end, as the schedule does, min. */
export const WAIT_HORIZON_MIN = 48 * 60;
const SEARCH_END_MIN = 1e-9;

/** The first stop of the way up and what decides how long it lasts. */
export interface RequiredWait {
  readonly schedule: Schedule;
  /** How long the schedule waits, in whole multiples of its rounding: 0 without a stop, Infinity where no wait is enough. */
  readonly minutes: number;
  readonly depthM: number;
  readonly gas: Gas;
  /** From here to the stop; empty if the diver is there. */
  readonly before: readonly AscentPart[];
  /** From the stop to the next level; without a stop, from here to the surface. */
  readonly onward: readonly AscentPart[];
  readonly nextM: number;
  /** The anchor of the line on arrival at the next level, m; 0 without a line. */
  readonly nextAnchorM: number;
  /** The gradient factor in force at the next level. */
  readonly nextGf: number;
  /** The compartment that decides, from 0. */
  readonly compartment: number;
  /** When the climb on becomes tolerated for it, to the instant, min; the schedule's own minutes where more than the arrival decides. */
  readonly exactMin: number;
  /** Whether arriving at the next level is what decides: now and then the line asks for more on the way there. */
  readonly arrivalDecides: boolean;
  /**
   * Waits up to here are passed over, min: 0 but for a compartment that would tolerate the climb at once, and fills up at
   * the stop while others are waited for.
   */
  readonly searchedFromMin: number;
}

/** The schedule of stops if the ascent began at this sample. */
export function scheduleNow({ timeline, figures, sample }: Instant): Schedule {
  return plannedAt(timeline, figures, sample);
}

/**
 * How long the first stop has to last, step by step: the wait until the next level is tolerated, rounded up as the plan
 * says.
 */
export function requiredWait(instant: Instant): RequiredWait {
  const { figures } = instant;
  const { plan, gradientFactors } = figures.limits;
  const schedule = scheduleNow(instant);
  const way = wayToFirstStop(instant, schedule);
  const nextAnchorM = schedule.onwardAnchorM ?? schedule.anchorM;
  const nextGf = nextAnchorM === 0 ? gradientFactors.high : gradientFactorAt(way.nextM, nextAnchorM, gradientFactors);
  const known = { schedule, ...way, nextAnchorM, nextGf };
  const justShortMin = justShortOf(way.minutes, plan.stopRoundingMin);
  const waits = way.minutes > 0 && way.minutes < Infinity;
  // The one that waits longest; where nobody waits, or for ever, the one with the least room.
  const lack = waits
    ? (c: number) => compartmentWaitMin(instant, known, c)
    : (c: number) => -nextLevel(instant, known, c, justShortMin).roomBar;
  const lacks = ALL_COMPARTMENTS.map(lack);
  const compartment = lacks.indexOf(Math.max(...lacks));
  const arrivalDecides = !waits || lacks[compartment]! > justShortMin - SEARCH_END_MIN;
  const exactMin = waits && arrivalDecides ? lacks[compartment]! : Math.min(way.minutes, WAIT_HORIZON_MIN);
  const fillsUp = way.minutes > 0 && nextLevel(instant, known, compartment, 0).roomBar >= 0;
  return { ...known, compartment, exactMin, arrivalDecides, searchedFromMin: fillsUp ? justShortMin : 0 };
}

type Way = Pick<RequiredWait, 'minutes' | 'depthM' | 'gas' | 'before' | 'onward' | 'nextM'>;

function wayToFirstStop({ timeline, figures, sample }: Instant, { parts, stops, timeToSurfaceMin }: Schedule): Way {
  const endless = timeToSurfaceMin === Infinity;
  if (stops.length === 0 && !endless) {
    const onward = joined(parts);
    return {
      minutes: 0,
      depthM: timeline.depthM[sample]!,
      gas: parts[0]?.gas ?? gasAt(timeline, sample),
      before: [],
      onward,
      nextM: onward.at(-1)?.toM ?? 0,
    };
  }
  const stop = stops[0];
  const untilStop = stop ? parts.findIndex(({ fromM, toM }) => fromM === toM) : parts.length;
  const depthM = stop ? stop.depthM : (parts.at(-1)?.toM ?? timeline.depthM[sample]!);
  const gas = stop ? stop.gas : (parts.at(-1)?.gas ?? gasAt(timeline, sample));
  const { limits } = figures;
  const nextM = levelM(levelAbove(depthM, limits.plan), limits.plan);
  // With nothing dissolved no stop is asked for, so what is planned is the bare climb, with its gas switches.
  const bare = ascentPlanner(limits, timeline)({ depthM, gas, ...emptyTissues(), at: 0, anchorM: 0 }).parts;
  const onward = bare.slice(0, bare.findIndex(({ toM }) => toM === nextM) + 1);
  return {
    minutes: stop ? stop.minutes : Infinity,
    depthM,
    gas: onward[0]!.gas,
    before: joined(parts.slice(0, untilStop)),
    onward: joined(onward),
    nextM,
  };
}

/** Climbs that go on alike are one: the schedule counts them level by level. */
function joined(parts: readonly AscentPart[]): AscentPart[] {
  const whole: AscentPart[] = [];
  for (const part of parts) {
    const last = whole.at(-1);
    const goesOn =
      last && sameGas(last.gas, part.gas) && Math.sign(last.toM - last.fromM) === Math.sign(part.toM - part.fromM);
    if (goesOn) whole[whole.length - 1] = { ...last, toM: part.toM, minutes: last.minutes + part.minutes };
    else whole.push(part);
  }
  return whole;
}

/** Everything but what the search for the wait finds. */
type StopToLeave = Omit<RequiredWait, 'compartment' | 'exactMin' | 'arrivalDecides' | 'searchedFromMin'>;

/** One compartment on arrival at the next level after a wait: what it holds, its limit, and the room between, bar. */
export function nextLevel(instant: Instant, wait: StopToLeave, compartment: number, waitMin: number) {
  const { timeline, sample } = instant;
  const { compartments, surfaceBar, barPerMetre } = timeline;
  const parts = [
    ...wait.before,
    { fromM: wait.depthM, toM: wait.depthM, minutes: waitMin, gas: wait.gas },
    ...wait.onward,
  ];
  const now = tissuesAt(timeline, sample);
  const carried = (of: 'N2' | 'He', startBar: number, k: number) =>
    parts.reduce((bar, part) => tensionAfterLeg(timeline, k, of, bar, part), startBar);
  const nitrogenBar = carried('N2', now.nitrogenBar[compartment]!, compartments.nitrogenK[compartment]!);
  const heliumBar =
    timeline.hasHelium || parts.some(({ gas }) => gas.he > 0)
      ? carried('He', now.heliumBar[compartment]!, compartments.heliumK[compartment]!)
      : 0;
  const a = mixedCoefficient(
    nitrogenBar,
    heliumBar,
    compartments.nitrogenA[compartment]!,
    compartments.heliumA[compartment]!,
  );
  const b = mixedCoefficient(
    nitrogenBar,
    heliumBar,
    compartments.nitrogenB[compartment]!,
    compartments.heliumB[compartment]!,
  );
  const limit = limitBar(a, b, wait.nextGf, surfaceBar + wait.nextM * barPerMetre);
  const tensionBar = nitrogenBar + heliumBar;
  return { nitrogenBar, heliumBar, tensionBar, limitBar: limit, roomBar: limit - tensionBar };
}

/** The least wait between one too short and one long enough that leaves room at the next level, min. */
function firstTolerated(
  instant: Instant,
  wait: StopToLeave,
  compartment: number,
  tooShortMin: number,
  enoughMin: number,
): number {
  let before = tooShortMin;
  let after = enoughMin;
  while (after - before > SEARCH_END_MIN) {
    const middle = (before + after) / 2;
    if (nextLevel(instant, wait, compartment, middle).roomBar < 0) before = middle;
    else after = middle;
  }
  return after;
}

/** How long one compartment alone would have to wait, min; Infinity where the whole wait is not enough for it. */
export function compartmentWaitMin(instant: Instant, wait: StopToLeave, compartment: number): number {
  const hasRoom = (waitMin: number) => nextLevel(instant, wait, compartment, waitMin).roomBar >= 0;
  if (wait.minutes === Infinity && !hasRoom(WAIT_HORIZON_MIN)) return Infinity;
  const justShortMin = justShortOf(wait.minutes, instant.figures.limits.plan.stopRoundingMin);
  // One that fills up at the stop may have room at once, and none just before the wait is over.
  if (!hasRoom(justShortMin)) return firstTolerated(instant, wait, compartment, justShortMin, wait.minutes);
  return hasRoom(0) ? 0 : firstTolerated(instant, wait, compartment, 0, justShortMin);
}

/** The longest wait that is not yet enough, min. */
function justShortOf(minutes: number, roundingMin: number): number {
  return minutes === Infinity ? WAIT_HORIZON_MIN : Math.max(0, minutes - roundingMin);
}

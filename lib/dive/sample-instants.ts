import type { Leg } from './legs';
import { reusedFloats, reusedIndexes } from './reused-array';

/** When a dive is sampled: the time of each sample, the leg it belongs to, and where each leg's samples begin. */
export interface Instants {
  readonly timeS: Float64Array;
  readonly leg: Int32Array;
  /** First sample of each leg; one more at the end, the last sample of all, where the last leg ends. */
  readonly firstOfLeg: readonly number[];
}

/** Two moments closer than this are one. */
export const SAME_INSTANT_S = 1e-6;

/**
 * Every multiple of `everyS` seconds (in surface intervals, of `intervalEveryS`) and of each of `alsoEveryS`, the start of
 * every leg and the end of the last. The times and leg numbers are written into `reuse` where they fit.
 */
export function sampleInstants(
  legs: readonly Leg[],
  endS: number,
  everyS: number,
  intervalEveryS: number,
  reuse?: { readonly timeS: Float64Array; readonly leg: Int32Array },
  alsoEveryS: readonly number[] = [],
): Instants {
  const firstOfLeg: number[] = [];
  const within = legs.map((current) => ticksWithin(current, current.interval ? intervalEveryS : everyS));
  const more = legs.map((current, index) => otherTicksWithin(current, within[index]!, alsoEveryS));
  let length = 0;
  legs.forEach((_, index) => {
    firstOfLeg.push(length);
    length += 1 + within[index]!.count + more[index]!.length;
  });
  firstOfLeg.push(length);
  length += 1;
  const timeS = reusedFloats(reuse?.timeS, length);
  const leg = reusedIndexes(reuse?.leg, length);
  legs.forEach((current, index) => {
    const first = firstOfLeg[index]!;
    const end = firstOfLeg[index + 1]!;
    const { tick, count, stepS } = within[index]!;
    timeS[first] = current.startS;
    for (let i = 0; i < count; i += 1) timeS[first + 1 + i] = (tick + i) * stepS;
    if (more[index]!.length > 0) {
      timeS.set(more[index]!, first + 1 + count);
      timeS.subarray(first + 1, end).sort();
    }
    leg.fill(index, first, end);
  });
  timeS[length - 1] = endS;
  leg[length - 1] = Math.max(0, legs.length - 1);
  return { timeS, leg, firstOfLeg };
}

interface Ticks {
  readonly tick: number;
  readonly count: number;
  readonly stepS: number;
}

/** The multiples of other steps within a leg that are no multiples of its own, s. */
function otherTicksWithin(leg: Leg, { stepS: ownS }: Ticks, alsoEveryS: readonly number[]): number[] {
  return alsoEveryS.flatMap((stepS, index) => {
    const { tick, count } = ticksWithin(leg, stepS);
    return Array.from({ length: count }, (_, i) => (tick + i) * stepS).filter((timeS) =>
      [ownS, ...alsoEveryS.slice(0, index)].every((other) => !isMultiple(timeS, other)),
    );
  });
}

/** Whether a time is a whole multiple of a step, but for rounding. */
export function isMultiple(timeS: number, stepS: number): boolean {
  return Math.abs(timeS - Math.round(timeS / stepS) * stepS) < SAME_INSTANT_S;
}

/** The multiples of a step that lie between a leg's start and its end: the first, and how many there are. */
function ticksWithin({ startS, endS }: Leg, stepS: number): Ticks {
  const tick = Math.floor((startS + SAME_INSTANT_S) / stepS) + 1;
  const last = Math.ceil((endS - SAME_INSTANT_S) / stepS) - 1;
  return { tick, count: Math.max(0, last - tick + 1), stepS };
}

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
const SAME_INSTANT_S = 1e-6;

/**
 * Every multiple of `everyS` seconds (in surface intervals, of `intervalEveryS`), the start of every leg and the end of
 * the last. The times and leg numbers are written into `reuse` where they fit.
 */
export function sampleInstants(
  legs: readonly Leg[],
  endS: number,
  everyS: number,
  intervalEveryS: number,
  reuse?: { readonly timeS: Float64Array; readonly leg: Int32Array },
): Instants {
  const firstOfLeg: number[] = [];
  let length = 0;
  for (const current of legs) {
    firstOfLeg.push(length);
    length += 1 + ticksWithin(current, current.interval ? intervalEveryS : everyS).count;
  }
  firstOfLeg.push(length);
  length += 1;
  const timeS = reusedFloats(reuse?.timeS, length);
  const leg = reusedIndexes(reuse?.leg, length);
  legs.forEach((current, index) => {
    const stepS = current.interval ? intervalEveryS : everyS;
    const first = firstOfLeg[index]!;
    const { tick, count } = ticksWithin(current, stepS);
    timeS[first] = current.startS;
    for (let i = 0; i < count; i += 1) timeS[first + 1 + i] = (tick + i) * stepS;
    leg.fill(index, first, firstOfLeg[index + 1]);
  });
  timeS[length - 1] = endS;
  leg[length - 1] = Math.max(0, legs.length - 1);
  return { timeS, leg, firstOfLeg };
}

/** The multiples of a step that lie between a leg's start and its end: the first, and how many there are. */
function ticksWithin({ startS, endS }: Leg, stepS: number): { tick: number; count: number } {
  const tick = Math.floor((startS + SAME_INSTANT_S) / stepS) + 1;
  const last = Math.ceil((endS - SAME_INSTANT_S) / stepS) - 1;
  return { tick, count: Math.max(0, last - tick + 1) };
}

import type { Leg } from '../dive/legs';
import type { Timeline } from '../dive/timeline';

/**
 * The speed at every sample, m/min, positive upward, averaged over the seconds before it: how much less deep than then.
 * Before a dive the depth counts as 0; at the surface after it there is no speed.
 *
 * It is taken from the dive's true legs times `depthFactor`, not from the depths shown: a constant fault of the sensor
 * changes no speed. Written into `rates`.
 */
export function averagedRates(
  timeline: Timeline,
  trueLegs: readonly Leg[],
  depthFactor: number,
  averageS: number,
  rates: Float64Array,
): void {
  const { length, timeS, leg } = timeline;
  const beganS = diveBeginnings(trueLegs);
  let then = 0;
  for (let i = 0; i < length; i += 1) {
    const index = leg[i]!;
    const current = trueLegs[index]!;
    rates[i] = 0;
    if (current.interval && timeS[i]! > current.startS) continue;
    const thenS = timeS[i]! - averageS;
    while (then < index && trueLegs[then]!.endS < thenS) then += 1;
    const thenM = thenS <= beganS[index]! ? 0 : depthOn(trueLegs[then]!, thenS);
    rates[i] = ((thenM - depthOn(current, timeS[i]!)) * depthFactor * 60) / averageS;
  }
}

/** The true depths that the speed at one sample is taken from, m: so many seconds before, and now. Both are 0 at rest at the surface. */
export function averagedDepths(
  { timeS, leg }: Timeline,
  trueLegs: readonly Leg[],
  averageS: number,
  sample: number,
): { readonly thenM: number; readonly nowM: number } {
  const index = leg[sample]!;
  const current = trueLegs[index]!;
  if (current.interval && timeS[sample]! > current.startS) return { thenM: 0, nowM: 0 };
  const thenS = timeS[sample]! - averageS;
  const before = trueLegs.find(({ endS }) => endS >= thenS) ?? current;
  return {
    thenM: thenS <= diveBeginnings(trueLegs)[index]! ? 0 : depthOn(before, thenS),
    nowM: depthOn(current, timeS[sample]!),
  };
}

/** When the dive that each leg belongs to began, s. */
function diveBeginnings(legs: readonly Leg[]): number[] {
  let beganS = 0;
  return legs.map((leg, index) => {
    if (index === 0 || legs[index - 1]!.diveNumber !== leg.diveNumber) beganS = leg.startS;
    return beganS;
  });
}

/** The depth at a moment of a leg, or of its end, m. */
function depthOn({ startS, endS, fromM, toM }: Leg, timeS: number): number {
  return timeS >= endS ? toM : fromM + ((toM - fromM) * (timeS - startS)) / (endS - startS);
}

import { COMPARTMENTS } from '../tissue/coefficients';
import type { Leg } from './legs';

/** One inert gas on its way through a dive: what is known before its tensions are. */
export interface Loading {
  readonly legs: readonly Leg[];
  readonly firstOfLeg: readonly number[];
  readonly timeS: Float64Array;
  readonly depthM: Float64Array;
  readonly ambientBar: Float64Array;
  readonly lungOffsetBar: number;
  /** Sixteen tensions to begin with, bar. */
  readonly start: Float64Array;
  /** ln 2 / half-time, 1/min. */
  readonly k: Float64Array;
  /** Fraction of the gas in each breathed gas. */
  readonly fractions: readonly number[];
  /** Legs at which the tissues begin anew from `start`. */
  readonly freshAtLegs: readonly number[];
}

/** Steps whose lengths differ by less than this are the same, s. */
const SAME_STEP_S = 1e-9;

/**
 * Carries a gas's sixteen tensions from sample to sample, leg by leg: Haldane's solution at constant depth, Schreiner's
 * where it changes. Writes all of `tensions`, sixteen for each sample, bar.
 */
export function fillTensions(tensions: Float64Array, loading: Loading): void {
  const { legs, firstOfLeg, timeS, ambientBar, lungOffsetBar, start, k, fractions, freshAtLegs } = loading;
  tensions.set(start);
  legs.forEach((leg, index) => {
    const first = firstOfLeg[index]!;
    const last = firstOfLeg[index + 1]!;
    if (index > 0 && freshAtLegs.includes(index)) tensions.set(start, first * COMPARTMENTS);
    const fraction = fractions[leg.gas]!;
    const alveolarBar = (ambientBar[first]! - lungOffsetBar) * fraction;
    const spanMin = (leg.endS - leg.startS) / 60;
    const rate =
      leg.fromM === leg.toM || spanMin === 0 ? 0 : ((ambientBar[last]! - ambientBar[first]!) * fraction) / spanMin;
    let at = first;
    while (at < last) {
      const stepS = timeS[at + 1]! - timeS[at]!;
      let to = at + 1;
      while (to < last && Math.abs(timeS[to + 1]! - timeS[to]! - stepS) <= SAME_STEP_S) to += 1;
      const fromBar = alveolarBar + rate * ((timeS[at]! - leg.startS) / 60);
      carry(tensions, at, to, fromBar, rate, stepS / 60, k);
      at = to;
    }
  });
}

/**
 * Equal steps of `stepMin` minutes from sample `from` to sample `to`, while the lungs go from `alveolarBar` at `rate`
 * bar/min. Schreiner's solution for the gap g = P − P_alv, which is all that decays:
 * g' = g·e^(−k·t) − R·(1 − e^(−k·t))/k, at R = 0 Haldane's. In this form nothing is lost to rounding when large terms cancel.
 *
 * Four compartments go side by side: each waits for its own last result, and the processor works on the others meanwhile.
 */
function carry(
  tensions: Float64Array,
  from: number,
  to: number,
  alveolarBar: number,
  rate: number,
  stepMin: number,
  k: Float64Array,
): void {
  const riseBar = rate * stepMin;
  const end = to * COMPARTMENTS;
  for (let c = 0; c < COMPARTMENTS; c += 4) {
    const k0 = k[c]!;
    const k1 = k[c + 1]!;
    const k2 = k[c + 2]!;
    const k3 = k[c + 3]!;
    const left0 = Math.exp(-k0 * stepMin);
    const left1 = Math.exp(-k1 * stepMin);
    const left2 = Math.exp(-k2 * stepMin);
    const left3 = Math.exp(-k3 * stepMin);
    const lost0 = (-rate * Math.expm1(-k0 * stepMin)) / k0;
    const lost1 = (-rate * Math.expm1(-k1 * stepMin)) / k1;
    const lost2 = (-rate * Math.expm1(-k2 * stepMin)) / k2;
    const lost3 = (-rate * Math.expm1(-k3 * stepMin)) / k3;
    const start = from * COMPARTMENTS + c;
    let gap0 = tensions[start]! - alveolarBar;
    let gap1 = tensions[start + 1]! - alveolarBar;
    let gap2 = tensions[start + 2]! - alveolarBar;
    let gap3 = tensions[start + 3]! - alveolarBar;
    let step = 0;
    for (let at = start + COMPARTMENTS; at <= end + c; at += COMPARTMENTS) {
      step += 1;
      const breathedBar = alveolarBar + riseBar * step;
      gap0 = gap0 * left0 - lost0;
      gap1 = gap1 * left1 - lost1;
      gap2 = gap2 * left2 - lost2;
      gap3 = gap3 * left3 - lost3;
      tensions[at] = breathedBar + gap0;
      tensions[at + 1] = breathedBar + gap1;
      tensions[at + 2] = breathedBar + gap2;
      tensions[at + 3] = breathedBar + gap3;
    }
  }
}

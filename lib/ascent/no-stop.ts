import { COMPARTMENTS } from '../tissue/coefficients';
import { coefficientsOf, inertBarOf, type Load } from './ceiling';

/** Longest no-stop time that is told as a figure, min; beyond it a person reads "more than 99 min". */
export const NO_STOP_CAP_MIN = 99;

/** Pressure of each inert gas in the lungs, bar. */
export interface Breathed {
  readonly nitrogenBar: number;
  readonly heliumBar: number;
}

/** Minutes left and the compartment (1–16) that ends them; Infinity and 0 where none ever will. */
export interface NoStop {
  readonly minutes: number;
  readonly leader: number;
}

/**
 * Minutes at this depth on this gas until surfacing at once would break the limit at the surface under `gf`. No credit
 * for gas lost on the way up. 0 once a limit is broken already.
 *
 * With nitrogen alone the moment is solved for: t = ln((P_alv − P)/(P_alv − limit))/k. With helium the limit moves with
 * the mixture in the tissue and the moment is found by search, up to the cap; later ones count as never.
 */
export function noStop(load: Load, breathed: Breathed, gf: number): NoStop {
  let minutes = Infinity;
  let leader = 0;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const own = compartmentNoStopMin(load, breathed, gf, c, minutes);
    if (own < minutes) {
      minutes = own;
      leader = c + 1;
    }
  }
  return { minutes, leader };
}

/** One compartment's no-stop time, min; where it is longer than `within` it may be told as Infinity. */
export function compartmentNoStopMin(load: Load, breathed: Breathed, gf: number, compartment: number, within = Infinity): number {
  if (load.heliumBar[load.at + compartment]! > 0 || breathed.heliumBar > 0) {
    return mixedNoStopMin(load, breathed, gf, compartment, Math.min(within, NO_STOP_CAP_MIN + 1));
  }
  const { surfaceBar, compartments } = load;
  const tension = load.nitrogenBar[load.at + compartment]!;
  const limit = surfaceBar + gf * (compartments.nitrogenA[compartment]! + surfaceBar / compartments.nitrogenB[compartment]! - surfaceBar);
  if (tension >= limit) return 0;
  const overBar = breathed.nitrogenBar - limit;
  if (overBar <= 0) return Infinity;
  const k = compartments.nitrogenK[compartment]!;
  // ln x ≥ 1 − 1/x, so a compartment that cannot be the first is passed over without its logarithm.
  if ((limit - tension) / (breathed.nitrogenBar - tension) >= within * k) return Infinity;
  return Math.log((breathed.nitrogenBar - tension) / overBar) / k;
}

const SEARCH_STEP_MIN = 1;
const SEARCH_END_MIN = 1e-9;

function mixedNoStopMin(load: Load, breathed: Breathed, gf: number, compartment: number, within: number): number {
  const { compartments: all, surfaceBar } = load;
  const start = load.at + compartment;
  const overBar = (minutes: number) => {
    const nitrogen = breathed.nitrogenBar + (load.nitrogenBar[start]! - breathed.nitrogenBar) * Math.exp(-all.nitrogenK[compartment]! * minutes);
    const helium = breathed.heliumBar + (load.heliumBar[start]! - breathed.heliumBar) * Math.exp(-all.heliumK[compartment]! * minutes);
    const inert = nitrogen + helium;
    const a = (all.nitrogenA[compartment]! * nitrogen + all.heliumA[compartment]! * helium) / inert;
    const b = (all.nitrogenB[compartment]! * nitrogen + all.heliumB[compartment]! * helium) / inert;
    return inert - surfaceBar - gf * (a + surfaceBar / b - surfaceBar);
  };
  if (overBar(0) >= 0) return 0;
  let before = 0;
  while (before < within) {
    let after = before + SEARCH_STEP_MIN;
    if (overBar(after) < 0) {
      before = after;
      continue;
    }
    while (after - before > SEARCH_END_MIN) {
      const middle = (before + after) / 2;
      if (overBar(middle) < 0) before = middle;
      else after = middle;
    }
    return after;
  }
  return Infinity;
}

/** How far a compartment is from its limit at the surface under `gf`, bar; negative once past it. */
export function surfaceMarginBar(load: Load, gf: number, compartment: number): number {
  const { a, b } = coefficientsOf(load, compartment);
  return load.surfaceBar + gf * (a + load.surfaceBar / b - load.surfaceBar) - inertBarOf(load, compartment);
}

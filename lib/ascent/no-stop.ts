import { NO_STOP_CAP_MIN } from './no-stop-cap';
import { COMPARTMENTS } from '../tissue/coefficients';
import { limitBar } from '../tissue/limit';
import { rootBetween } from './root';
import { coefficientsOf, inertBarOf, type Load } from './ceiling';

/** How far ahead a no-stop time is searched for where it can't be solved for, min. */
export const SEARCHED_MIN = NO_STOP_CAP_MIN + 1;

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
 * the mixture in the tissue and the moment is found by search, `searchedMin` minutes ahead; later ones count as never.
 */
export function noStop(load: Load, breathed: Breathed, gf: number, searchedMin = SEARCHED_MIN): NoStop {
  let minutes = Infinity;
  let leader = 0;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const own = compartmentNoStopMin(load, breathed, gf, c, minutes, searchedMin);
    if (own < minutes) {
      minutes = own;
      leader = c + 1;
    }
  }
  return { minutes, leader };
}

/** One compartment's no-stop time, min; where it is longer than `within` it may be told as Infinity. */
export function compartmentNoStopMin(
  load: Load,
  breathed: Breathed,
  gf: number,
  compartment: number,
  within = Infinity,
  searchedMin = SEARCHED_MIN,
): number {
  if (load.heliumBar[load.at + compartment]! > 0 || breathed.heliumBar > 0) {
    return mixedNoStopMin(load, breathed, gf, compartment, Math.min(within, searchedMin));
  }
  const { surfaceBar, compartments } = load;
  const tension = load.nitrogenBar[load.at + compartment]!;
  const limit = limitBar(compartments.nitrogenA[compartment]!, compartments.nitrogenB[compartment]!, gf, surfaceBar);
  if (tension >= limit) return 0;
  const overBar = breathed.nitrogenBar - limit;
  if (overBar <= 0) return Infinity;
  const k = compartments.nitrogenK[compartment]!;
  // ln x ≥ 1 − 1/x, so a compartment that cannot be the first is passed over without its logarithm.
  if ((limit - tension) / (breathed.nitrogenBar - tension) >= within * k) return Infinity;
  return Math.log((breathed.nitrogenBar - tension) / overBar) / k;
}

/** A search for the end of a no-stop time looks a minute on at a time, and ends when it is known so closely, min. */
export const SEARCH_STEP_MIN = 1;
export const SEARCH_END_MIN = 1e-9;

function mixedNoStopMin(load: Load, breathed: Breathed, gf: number, compartment: number, within: number): number {
  const { compartments: all, surfaceBar } = load;
  const way: MixedWay = {
    nitrogenBar: breathed.nitrogenBar,
    heliumBar: breathed.heliumBar,
    nitrogenGapBar: load.nitrogenBar[load.at + compartment]! - breathed.nitrogenBar,
    heliumGapBar: load.heliumBar[load.at + compartment]! - breathed.heliumBar,
    nitrogenK: all.nitrogenK[compartment]!,
    heliumK: all.heliumK[compartment]!,
  };
  const limit: MixedLimit = {
    nitrogenA: all.nitrogenA[compartment]!,
    heliumA: all.heliumA[compartment]!,
    nitrogenB: all.nitrogenB[compartment]!,
    heliumB: all.heliumB[compartment]!,
    surfaceBar,
    gf,
  };
  let over = overBarAfter(0, way, limit);
  if (over >= 0) return 0;
  // The most the tissue can ever hold, against the least it can ever tolerate whatever the mixture.
  const mostBar = way.nitrogenBar + Math.max(0, way.nitrogenGapBar) + way.heliumBar + Math.max(0, way.heliumGapBar);
  const leastA = Math.min(limit.nitrogenA, limit.heliumA);
  const leastBar = limitBar(leastA, Math.max(limit.nitrogenB, limit.heliumB), gf, surfaceBar);
  if (mostBar <= leastBar) return Infinity;
  const nitrogenLeft = Math.exp(-way.nitrogenK * SEARCH_STEP_MIN);
  const heliumLeft = Math.exp(-way.heliumK * SEARCH_STEP_MIN);
  let nitrogenGapBar = way.nitrogenGapBar;
  let heliumGapBar = way.heliumGapBar;
  // As one gas comes and the other goes, a limit may be passed and kept again within one step.
  const mayTurn = nitrogenGapBar * heliumGapBar < 0;
  for (let before = 0; before < within; before += SEARCH_STEP_MIN) {
    const after = before + SEARCH_STEP_MIN;
    const nitrogenGapBefore = nitrogenGapBar;
    const heliumGapBefore = heliumGapBar;
    const overBefore = over;
    nitrogenGapBar *= nitrogenLeft;
    heliumGapBar *= heliumLeft;
    over = overBar(way.nitrogenBar + nitrogenGapBar, way.heliumBar + heliumGapBar, limit);
    if (over >= 0) return crossingMin(way, limit, before, after);
    if (!mayTurn) continue;
    // It rises by no more than what comes: what goes takes more with it than the limit loses.
    if (overBefore + Math.max(nitrogenGapBar - nitrogenGapBefore, heliumGapBar - heliumGapBefore) < 0) continue;
    if (overPerMin(nitrogenGapBefore, heliumGapBefore, way, limit) <= 0) continue;
    if (overPerMin(nitrogenGapBar, heliumGapBar, way, limit) >= 0) continue;
    const peak = rootBetween((minutes) => overPerMin(...gapsAfter(minutes, way), way, limit), before, after);
    if (overBarAfter(peak, way, limit) >= 0) return crossingMin(way, limit, before, peak);
  }
  return Infinity;
}

/** Where one compartment's two tensions are going, and how far they have to go, bar. */
interface MixedWay {
  readonly nitrogenBar: number;
  readonly heliumBar: number;
  readonly nitrogenGapBar: number;
  readonly heliumGapBar: number;
  readonly nitrogenK: number;
  readonly heliumK: number;
}

interface MixedLimit {
  readonly nitrogenA: number;
  readonly heliumA: number;
  readonly nitrogenB: number;
  readonly heliumB: number;
  readonly surfaceBar: number;
  readonly gf: number;
}

/** How far two tensions are over the limit at the surface for their mixture, bar. */
function overBar(
  nitrogenBar: number,
  heliumBar: number,
  { nitrogenA, heliumA, nitrogenB, heliumB, surfaceBar, gf }: MixedLimit,
): number {
  const inertBar = nitrogenBar + heliumBar;
  const a = (nitrogenA * nitrogenBar + heliumA * heliumBar) / inertBar;
  const b = (nitrogenB * nitrogenBar + heliumB * heliumBar) / inertBar;
  return inertBar - limitBar(a, b, gf, surfaceBar);
}

/** What is left of the gap of each gas after some minutes, bar. */
function gapsAfter(minutes: number, way: MixedWay): [nitrogenBar: number, heliumBar: number] {
  return [way.nitrogenGapBar * Math.exp(-way.nitrogenK * minutes), way.heliumGapBar * Math.exp(-way.heliumK * minutes)];
}

function overBarAfter(minutes: number, way: MixedWay, limit: MixedLimit): number {
  const [nitrogenGapBar, heliumGapBar] = gapsAfter(minutes, way);
  return overBar(way.nitrogenBar + nitrogenGapBar, way.heliumBar + heliumGapBar, limit);
}

/** How fast that changes while so much is left of each gap, bar/min: of P − p − gf·(a + p/b − p), with P' = −k·gap. */
function overPerMin(nitrogenGapBar: number, heliumGapBar: number, way: MixedWay, limit: MixedLimit): number {
  const { nitrogenA, heliumA, nitrogenB, heliumB, surfaceBar, gf } = limit;
  const inertBar = way.nitrogenBar + nitrogenGapBar + way.heliumBar + heliumGapBar;
  const heliumPerMin = -way.heliumK * heliumGapBar;
  const inertPerMin = heliumPerMin - way.nitrogenK * nitrogenGapBar;
  const share = (way.heliumBar + heliumGapBar) / inertBar;
  const sharePerMin = (heliumPerMin - share * inertPerMin) / inertBar;
  const b = nitrogenB + (heliumB - nitrogenB) * share;
  const limitPerShare = heliumA - nitrogenA - (surfaceBar * (heliumB - nitrogenB)) / (b * b);
  return inertPerMin - gf * limitPerShare * sharePerMin;
}

/** When a tissue within its limit at `fromMin` passes it, by halving. */
function crossingMin(way: MixedWay, limit: MixedLimit, fromMin: number, toMin: number): number {
  let before = fromMin;
  let after = toMin;
  while (after - before > SEARCH_END_MIN) {
    const middle = (before + after) / 2;
    if (overBarAfter(middle, way, limit) < 0) before = middle;
    else after = middle;
  }
  return after;
}

/** How far a compartment is from its limit at the surface under `gf`, bar; negative once past it. */
export function surfaceMarginBar(load: Load, gf: number, compartment: number): number {
  const { a, b } = coefficientsOf(load, compartment);
  return limitBar(a, b, gf, load.surfaceBar) - inertBarOf(load, compartment);
}

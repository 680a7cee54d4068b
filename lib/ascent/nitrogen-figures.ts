import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';

/**
 * The limits of sixteen compartments that hold nitrogen only, as constants: where no helium is about, a and b stand
 * still, and ceilings and no-stop times of a whole timeline come down to a few multiplications each.
 * The general functions say the same; the tests hold the two together.
 */
export interface NitrogenLimits {
  /** p_tol = (P − offset)·scale, bar. */
  readonly offsetBar: Float64Array;
  readonly scale: Float64Array;
  /** Tolerated tension at the surface, bar. */
  readonly surfaceLimitBar: Float64Array;
}

export function nitrogenLimits({ nitrogenA, nitrogenB }: Compartments, gf: number, surfaceBar: number): NitrogenLimits {
  return {
    offsetBar: nitrogenA.map((a) => a * gf),
    scale: nitrogenB.map((b) => 1 / (gf / b - gf + 1)),
    surfaceLimitBar: nitrogenA.map((a, c) => surfaceBar + gf * (a + surfaceBar / nitrogenB[c]! - surfaceBar)),
  };
}

/** Deepest tolerated ambient pressure of sixteen tensions from `at` on, bar, not below `surfaceBar`. */
export function deepestToleratedBar(tensions: Float64Array, at: number, limits: NitrogenLimits, surfaceBar: number): number {
  const { offsetBar, scale } = limits;
  let deepest = surfaceBar;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const tolerated = (tensions[at + c]! - offsetBar[c]!) * scale[c]!;
    if (tolerated > deepest) deepest = tolerated;
  }
  return deepest;
}

/** The compartment (1–16) whose tolerated pressure that is; 0 where it is the surface's own. */
export function leaderOfTolerated(tensions: Float64Array, at: number, limits: NitrogenLimits, deepestBar: number, surfaceBar: number): number {
  if (deepestBar <= surfaceBar) return 0;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    if ((tensions[at + c]! - limits.offsetBar[c]!) * limits.scale[c]! === deepestBar) return c + 1;
  }
  return 0;
}

/**
 * The compartment (1–16) that ends the no-stop time while `breathedBar` of nitrogen is in the lungs, trying `likely`
 * first; 0 where none will. Asked only while every compartment is within its limit.
 */
export function noStopLeaderOf(tensions: Float64Array, at: number, k: Float64Array, limitBar: Float64Array, breathedBar: number, likely: number): number {
  let best = Infinity;
  let leader = 0;
  if (likely > 0 && breathedBar > limitBar[likely - 1]!) {
    best = minutesToLimit(tensions[at + likely - 1]!, breathedBar, limitBar[likely - 1]!, k[likely - 1]!);
    leader = likely;
  }
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const limit = limitBar[c]!;
    if (breathedBar <= limit) continue;
    const tension = tensions[at + c]!;
    // ln x ≥ 1 − 1/x: a compartment that cannot be the first is passed over without its logarithm.
    if (limit - tension >= best * k[c]! * (breathedBar - tension)) continue;
    const minutes = minutesToLimit(tension, breathedBar, limit, k[c]!);
    if (minutes < best) {
      best = minutes;
      leader = c + 1;
    }
  }
  return leader;
}

/** Haldane's solution turned round: minutes until a tension reaches a limit below the breathed pressure. */
export function minutesToLimit(tensionBar: number, breathedBar: number, limitBar: number, k: number): number {
  return Math.log((breathedBar - tensionBar) / (breathedBar - limitBar)) / k;
}

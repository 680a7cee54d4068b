import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';
import { toleratedAmbientBar } from '../tissue/limit';
import type { GradientFactors } from '../dive/dive';

/** What a ceiling is worked out from: one diver at one instant. Arrays hold sixteen tensions from `at` on, bar. */
export interface Load {
  readonly compartments: Compartments;
  readonly nitrogenBar: Float64Array;
  readonly heliumBar: Float64Array;
  /** Where the sixteen begin in the arrays. */
  readonly at: number;
  readonly surfaceBar: number;
  readonly barPerMetre: number;
}

/** A depth and the compartment (1–16) that sets it; 0 where none does. */
export interface Ceiling {
  readonly depthM: number;
  readonly leader: number;
}

/** Depths closer than this are the same depth: far below anything a gauge or a reader can tell, far above rounding. */
export const SAME_DEPTH_M = 1e-9;

/** a and b of a compartment for the gases it holds, each weighted by its tension. */
export function coefficientsOf(load: Load, compartment: number): { readonly a: number; readonly b: number } {
  const { nitrogenA, nitrogenB, heliumA, heliumB } = load.compartments;
  const helium = load.heliumBar[load.at + compartment]!;
  if (helium === 0) return { a: nitrogenA[compartment]!, b: nitrogenB[compartment]! };
  const nitrogen = load.nitrogenBar[load.at + compartment]!;
  const inert = nitrogen + helium;
  return {
    a: (nitrogenA[compartment]! * nitrogen + heliumA[compartment]! * helium) / inert,
    b: (nitrogenB[compartment]! * nitrogen + heliumB[compartment]! * helium) / inert,
  };
}

/** Nitrogen and helium a compartment holds together, bar; compartments count from 0. */
export function inertBarOf(load: Load, compartment: number): number {
  return load.nitrogenBar[load.at + compartment]! + load.heliumBar[load.at + compartment]!;
}

/** The ceiling under one gradient factor: the deepest of the sixteen tolerated depths, never above the surface. */
export function ceilingAtGf(load: Load, gf: number): Ceiling {
  let deepestBar = load.surfaceBar;
  let leader = 0;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const { a, b } = coefficientsOf(load, c);
    const toleratedBar = toleratedAmbientBar(inertBarOf(load, c), a, b, gf);
    if (toleratedBar > deepestBar) {
      deepestBar = toleratedBar;
      leader = c + 1;
    }
  }
  return { depthM: (deepestBar - load.surfaceBar) / load.barPerMetre, leader };
}

/** The gradient factor in force at a depth: `low` from the anchor down, straight to `high` at the surface; `high` without an anchor. */
export function gradientFactorAt(depthM: number, anchorM: number, { low, high }: GradientFactors): number {
  if (depthM <= 0 || anchorM <= 0) return high;
  return depthM >= anchorM ? low : high + ((low - high) * depthM) / anchorM;
}

/**
 * The ceiling on the line from low to high: the shallowest depth from which down to the anchor every compartment is
 * within the line. It is 0 exactly while the surface is tolerated at `high`.
 *
 * A compartment's limit along the line is a parabola that opens downward in depth, and it is kept at the anchor, so
 * the depths that keep it reach from the anchor up to one point, the root solved for here.
 */
export function ceilingOnLine(load: Load, gf: GradientFactors, anchorM: number): Ceiling {
  if (gf.low === gf.high) return ceilingAtGf(load, gf.high);
  if (anchorM <= 0) return { depthM: 0, leader: 0 };
  const { surfaceBar } = load;
  let deepestBar = 0;
  let leader = 0;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const { a, b } = coefficientsOf(load, c);
    const ownBar = lineDepthBar(inertBarOf(load, c), a, b, gf, surfaceBar, anchorM * load.barPerMetre);
    if (ownBar > deepestBar) {
      deepestBar = ownBar;
      leader = c + 1;
    }
  }
  return { depthM: Math.min(deepestBar / load.barPerMetre, anchorM), leader };
}

/** How far below the surface a tension on the line from low to high must stay, bar; not above 0 where it needn't. */
export function lineDepthBar(
  tensionBar: number,
  a: number,
  b: number,
  { low, high }: GradientFactors,
  surfaceBar: number,
  anchorBar: number,
): number {
  const steepness = 1 / b - 1;
  const gradientBar = a + surfaceBar * steepness;
  const shortBar = surfaceBar + high * gradientBar - tensionBar;
  if (shortBar >= 0) return 0;
  const slope = (low - high) / anchorBar;
  const linear = 1 + high * steepness + slope * gradientBar;
  return (-2 * shortBar) / (linear + Math.sqrt(Math.max(0, linear * linear - 4 * slope * steepness * shortBar)));
}

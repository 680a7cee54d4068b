import constants from '../../content/published/loading.json';
import coefficients from '../../content/published/zhl16.json';
import { loadingSchema, zhl16Schema } from '../../content/published/schema';
import { AIR, nitrogenFraction, type Gas } from '../physics/gas';

/** What both kinds of comparison with the numerical solution say of it. */
export const SOLVED = {
  source:
    'numerical integration of dP/dt = k·(P_alv − P) by the general-purpose library mathjs (RK45), from the published half-times',
  obtained: 'derived',
  unit: 'bar',
  tolerance: 1e-9,
  reason: 'both are exact but for rounding and the last digits of the integration',
} as const;

/** Longest step, in half-times. */
export const STEP_SHARE = 0.05;

/** Pressures of a dive at sea level in reference water, stated here anew so that they are not the engine's. */
export const SURFACE_BAR = 1.01325;
/** Ambient pressure at a depth, bar, by the plain convention of these checks: 10 m of water to the bar. */
const ambientAt = (depthM: number) => SURFACE_BAR + depthM / 10;

type InertGas = 'nitrogen' | 'helium';

/** One stretch of a dive as the equation sees it. */
export interface Stretch {
  readonly minutes: number;
  readonly fromM: number;
  readonly toM: number;
  readonly gas: Gas;
}

/** The published rows of the sixteen compartments, 1b first. */
export const PUBLISHED_ROWS = zhl16Schema.parse(coefficients).values.filter(({ compartment }) => compartment !== '1');

/** Tension, bar, of one gas in one of the sixteen (from 0) after stretches that begin settled on air at the surface. */
export type Solve = (row: number, of: InertGas, stretches: readonly Stretch[], stepShare: number) => number;

type SolveODE = (
  slope: (minutes: number, state: readonly [number]) => [number],
  span: readonly [number, number],
  start: readonly [number],
  options: {
    readonly method: 'RK45';
    readonly tol: number;
    readonly firstStep: number;
    readonly maxStep: number;
    readonly maxIter: number;
  },
) => { readonly y: readonly (readonly [number])[] };

const fractionOf = (gas: Gas, of: InertGas) => (of === 'nitrogen' ? nitrogenFraction(gas) : gas.he);

/**
 * Integrates dP/dt = k·(P_alv(t) − P) numerically with mathjs, which knows nothing of diving. Loaded when called, so
 * that its weight is only borne by those who ask.
 *
 * The solver's error estimate leaves out the step size, so its own tolerance cannot be relied on: the step is bounded
 * to a share of the half-time, and the caller halves it to see that nothing moves.
 */
export async function numericalSolution(): Promise<Solve> {
  // The library's types do not list this function.
  const { solveODE } = (await import('mathjs')) as unknown as { readonly solveODE: SolveODE };
  const vapourBar = loadingSchema.parse(constants).waterVapour.bar;
  return (row, of, stretches, stepShare) => {
    const { halfTimeMin } = PUBLISHED_ROWS[row]![of];
    const k = Math.LN2 / halfTimeMin;
    let tensionBar = (SURFACE_BAR - vapourBar) * fractionOf(AIR, of);
    for (const { minutes, fromM, toM, gas } of stretches) {
      const step = Math.min(minutes, halfTimeMin * stepShare);
      const slope = (t: number, [p]: readonly [number]): [number] => [
        k * ((ambientAt(fromM + ((toM - fromM) * t) / minutes) - vapourBar) * fractionOf(gas, of) - p),
      ];
      const options = { method: 'RK45', tol: 1e-6, firstStep: step, maxStep: step, maxIter: 1e6 } as const;
      tensionBar = solveODE(slope, [0, minutes], [tensionBar], options).y.at(-1)![0];
    }
    return tensionBar;
  };
}

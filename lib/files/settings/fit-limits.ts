import type { Figures } from '../../ascent/figures';
import type { GradientFactors } from '../../dive/dive';
import { believedTimeline, misfitOf, type Comparison, type Misfit, type UnitSettings } from './unit-fit';

/** Settings of a unit and how well they explain what it showed. */
export interface Fit {
  readonly settings: UnitSettings;
  readonly misfit: Misfit;
}

export type Site = Omit<UnitSettings, 'gradientFactors'>;

/** Gradient factors are searched in whole percent, between these. */
const LOWEST = 10;
const HIGHEST = 100;
const COARSE = 10;
const FINE = 2;

/** Rough limits to rank sites by, percent. */
const ROUGH_HIGHS = [40, 50, 60, 70, 80, 90, 100];
const ROUGH_SHARES = [0.3, 0.65, 1];

/** Tries gradient factors for one site; a pair is worked out once. */
function limitsTried(comparison: Comparison, site: Site) {
  const timeline = believedTimeline(comparison, site);
  const known = new Map<number, Misfit>();
  let figures: Figures | undefined;
  let best: Fit | undefined;
  const pair = (low: number, high: number): GradientFactors => ({ low: low / 100, high: high / 100 });
  return {
    /** Percent. Where the low one leaves no trace it is taken to be the high one. */
    score(low: number, high: number): number {
      const used = comparison.sawStops ? low : high;
      if (high > HIGHEST || used < LOWEST || used > high) return Infinity;
      const key = used * 1000 + high;
      let misfit = known.get(key);
      if (!misfit) {
        const made = misfitOf(comparison, timeline, pair(used, high), figures);
        figures = made.figures;
        misfit = made.misfit;
        known.set(key, misfit);
        if (!best || misfit.score < best.misfit.score)
          best = { settings: { ...site, gradientFactors: pair(used, high) }, misfit };
      }
      return misfit.score;
    },
    best: () => best!,
  };
}

/** A quick look at how well a site could do. */
export function roughFit(comparison: Comparison, site: Site): Fit {
  const tried = limitsTried(comparison, site);
  for (const high of ROUGH_HIGHS) for (const share of ROUGH_SHARES) tried.score(Math.round(high * share), high);
  return tried.best();
}

/** The best gradient factors for a site to the whole percent: a grid over all of them, a finer one along the low one, then steps that shorten. */
export function fineFit(comparison: Comparison, site: Site, from?: GradientFactors): Fit {
  const tried = limitsTried(comparison, site);
  if (from) descend(tried, percentOf(from.low), percentOf(from.high), [4, 2, 1]);
  else {
    for (let high = 30; high <= HIGHEST; high += COARSE) {
      for (let low = LOWEST; low <= high; low += COARSE) tried.score(low, high);
    }
    descendFromBest(tried, [5, 3, 2, 1]);
    // Stops come every few metres, so along the low factor the valleys are narrow: one may lie between the grid's lines.
    const high = percentOf(tried.best().settings.gradientFactors.high);
    for (let low = LOWEST; comparison.sawStops && low <= high; low += FINE) tried.score(low, high);
    descendFromBest(tried, [2, 1]);
  }
  return tried.best();
}

function percentOf(fraction: number): number {
  return Math.round(fraction * 100);
}

function descendFromBest(tried: ReturnType<typeof limitsTried>, steps: readonly number[]): void {
  const { low, high } = tried.best().settings.gradientFactors;
  descend(tried, percentOf(low), percentOf(high), steps);
}

function descend(
  { score }: ReturnType<typeof limitsTried>,
  startLow: number,
  startHigh: number,
  steps: readonly number[],
): void {
  let low = startLow;
  let high = startHigh;
  let here = score(low, high);
  for (const step of steps) {
    for (let moved = true; moved;) {
      moved = false;
      for (const [dLow, dHigh] of DIRECTIONS) {
        const there = score(low + dLow * step, high + dHigh * step);
        if (there >= here) continue;
        here = there;
        low += dLow * step;
        high += dHigh * step;
        moved = true;
      }
    }
  }
}

const DIRECTIONS = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [2, 1],
  [-2, -1],
  [1, 2],
  [-1, -2],
] as const;

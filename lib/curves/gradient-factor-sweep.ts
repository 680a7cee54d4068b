import { breathedAt } from '../ascent/breathed';
import { creditedNoStopMin } from '../ascent/credited-no-stop';
import { noStop } from '../ascent/no-stop';
import { ascentPlanner } from '../ascent/plan/schedule';
import type { GradientFactors } from '../dive/dive';
import { bottomOf, type BottomPhase } from './bottom-phase';

/**
 * `timeToSurface`: the whole ascent with its stops after the bottom phase. `noStop`: no-stop time on arriving at its
 * depth, where the low gradient factor has no say. `creditedNoStop`: the same counting gas lost on the way up, where it has.
 */
export type SweepFigure = 'timeToSurface' | 'noStop' | 'creditedNoStop';

/** What to sweep, as plain data that a worker can be sent. */
export interface SweepRequest {
  readonly bottom: BottomPhase;
  readonly figure: SweepFigure;
  /** Gradient factors, 0–1: columns and rows of the grid. */
  readonly lows: readonly number[];
  readonly highs: readonly number[];
}

/** One figure for each pair, min. */
export interface SweepGrid {
  readonly lows: readonly number[];
  readonly highs: readonly number[];
  /**
   * Row by row, one row for each high: `values[row * lows.length + column]`. NaN where low would be above high, which
   * is no pair of limits; Infinity where no stop would be long enough or no limit is ever reached.
   */
  readonly values: Float64Array;
}

export interface SweepProgress {
  readonly rowsDone: number;
  readonly rows: number;
}

/**
 * Works a grid out one row at a time: each step yields how far it has come, and what it returns in the end is the grid.
 * To stop early, ask for no further step. Throws RangeError for a bottom phase that is no dive.
 */
export function* gradientFactorSweep({
  bottom,
  figure,
  lows,
  highs,
}: SweepRequest): Generator<SweepProgress, SweepGrid> {
  const figureOf = figureUnder(bottom, figure);
  const values = new Float64Array(lows.length * highs.length);
  for (let row = 0; row < highs.length; row += 1) {
    const high = highs[row]!;
    for (let column = 0; column < lows.length; column += 1) {
      const low = lows[column]!;
      values[row * lows.length + column] = low > high ? NaN : figureOf({ low, high });
    }
    yield { rowsDone: row + 1, rows: highs.length };
  }
  return { lows, highs, values };
}

/** Runs a sweep to its end. */
export function gradientFactorGrid(request: SweepRequest): SweepGrid {
  const sweep = gradientFactorSweep(request);
  for (;;) {
    const step = sweep.next();
    if (step.done) return step.value;
  }
}

function figureUnder(phase: BottomPhase, figure: SweepFigure): (gradientFactors: GradientFactors) => number {
  const { site, arrival } = bottomOf(phase);
  const planAscent = ascentPlanner(phase.settings, site);
  if (figure === 'timeToSurface') {
    return (gradientFactors) => planAscent(bottomOf(phase, gradientFactors).end, gradientFactors).timeToSurfaceMin;
  }
  if (figure === 'creditedNoStop') {
    return (gradientFactors) =>
      creditedNoStopMin(
        { ...phase.settings, gradientFactors },
        site,
        bottomOf(phase, gradientFactors).arrival,
        planAscent,
      );
  }
  const breathed = breathedAt(site, arrival.gas, site.surfaceBar + arrival.depthM * site.barPerMetre);
  return ({ high }) => noStop({ ...site, ...arrival }, breathed, high).minutes;
}

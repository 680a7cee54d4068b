import { ceilingAtGf } from '../ascent/ceiling';
import { ascentPlanner, type AscentSite, type AscentStart } from '../ascent/plan/schedule';
import { supersaturation } from '../ascent/supersaturation';
import type { Limits } from '../ascent/limits';
import { tissuesAfterChange } from './tissues-after-change';

/** What one ascent rate makes of a bottom phase. */
export interface AscentAtRate {
  readonly rateMMin: number;
  /** If you came straight up at this rate, stops or not, on the gas breathed at depth. */
  readonly direct: {
    readonly minutes: number;
    /** On reaching the surface: share of the way from the surface's pressure to the model's own limit; 1 is the limit. */
    readonly surfacingSupersaturation: number;
    readonly leader: number;
    /** Ceiling on reaching the surface under the high gradient factor, m; 0 where none is left. */
    readonly ceilingM: number;
  };
  /** If you came up as the model requires, moving at this rate between stops, with the gases carried. */
  readonly required: {
    readonly stops: number;
    readonly stopMin: number;
    readonly deepestStopM: number;
    /** Infinity when some stop would never end. */
    readonly timeToSurfaceMin: number;
  };
}

/**
 * Ascents from the end of a bottom phase at each of some rates, m/min: surfacing supersaturation of a direct ascent, and
 * the stops required at that rate. Throws RangeError for a rate that is not above 0.
 */
export function ascentRateCurve(
  settings: Limits,
  site: AscentSite,
  start: AscentStart,
  ratesMMin: ArrayLike<number>,
): AscentAtRate[] {
  return Array.from(ratesMMin, (rateMMin) => {
    if (!(rateMMin > 0)) throw new RangeError(`an ascent needs a rate of more than 0 m/min, not ${rateMMin} m/min`);
    const minutes = start.depthM / rateMMin;
    const surfaced = { ...site, ...tissuesAfterChange(site, start, start.gas, start.depthM, 0, minutes), at: 0 };
    const { value, leader } = supersaturation(surfaced, site.surfaceBar);
    const { stops, timeToSurfaceMin } = ascentPlanner(
      { ...settings, plan: { ...settings.plan, ascentMMin: rateMMin } },
      site,
    )(start);
    return {
      rateMMin,
      direct: {
        minutes,
        surfacingSupersaturation: value,
        leader,
        ceilingM: ceilingAtGf(surfaced, settings.gradientFactors.high).depthM,
      },
      required: {
        stops: stops.length,
        stopMin: stops.reduce((sum, stop) => sum + stop.minutes, 0),
        deepestStopM: stops[0]?.depthM ?? 0,
        timeToSurfaceMin,
      },
    };
  });
}

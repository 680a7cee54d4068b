import type { GradientFactors } from '../dive/dive';
import { COMPARTMENTS } from '../tissue/coefficients';
import { breathedAt } from './breathed';
import type { Limits } from './limits';
import { NO_STOP_CAP_MIN } from './no-stop-cap';
import { changeBetween } from './root';
import { ascentPlanner, type AscentPlanner, type AscentSite, type AscentStart } from './plan/schedule';
import { startsAfter } from './plan/start-after';
import { surelyFree } from './surely-free';
import { SEARCH_STEP_MIN } from './no-stop';

/** How closely the moment is then found, min. */
const FOUND_MIN = 1e-10;

/**
 * No-stop time with credit for the ascent: minutes until a direct ascent at the plan's rate, begun then, would first need
 * a stop. Infinity beyond the cap, 0 if a stop is needed already; deep or slow it may be shorter than the time without
 * credit, where the way up itself takes up gas. A planner of these limits may be given. Looked for a minute at a time from when the diver came to this depth, so
 * that it runs down a minute a minute, and then found exactly.
 */
export function creditedNoStopMin(
  limits: Limits,
  site: AscentSite,
  start: AscentStart,
  planAscent: AscentPlanner = ascentPlanner(limits, site),
): number {
  const { gradientFactors } = limits;
  const after = startsAfter(site, gradientFactors);
  const isSurelyFree = surelyFree(site, limits);
  const needsStop = (minutes: number) => {
    const then = after(start, minutes);
    return !isSurelyFree(then) && planAscent(then, gradientFactors, true).stops.length > 0;
  };
  if (needsStop(0)) return 0;
  if (neverAsks(planAscent, site, start, gradientFactors)) return Infinity;
  let before = 0;
  const goneMin = (start.stayedMin ?? 0) % SEARCH_STEP_MIN;
  for (let later = SEARCH_STEP_MIN - goneMin; before < NO_STOP_CAP_MIN; later += SEARCH_STEP_MIN) {
    if (needsStop(later)) return changeBetween(needsStop, before, later, FOUND_MIN);
    before = later;
  }
  return Infinity;
}

/**
 * Whether even compartments as full as they can get here leave the way up free. Tensions stay between what they are and
 * what is breathed, and more nitrogen never makes a way up easier; with helium the limits move with the mixture, so
 * that this is not said of it.
 */
function neverAsks(
  planAscent: AscentPlanner,
  site: AscentSite,
  start: AscentStart,
  gradientFactors: GradientFactors,
): boolean {
  const { nitrogenBar, heliumBar } = breathedAt(site, start.gas, site.surfaceBar + start.depthM * site.barPerMetre);
  const tensions = (of: Float64Array) => of.subarray(start.at, start.at + COMPARTMENTS);
  if (heliumBar > 0 || tensions(start.heliumBar).some((tension) => tension > 0)) return false;
  const full = tensions(start.nitrogenBar).map((tension) => Math.max(tension, nitrogenBar));
  const { stops, anchorM } = planAscent(
    { ...start, nitrogenBar: full, heliumBar: tensions(start.heliumBar), at: 0 },
    gradientFactors,
    true,
  );
  return stops.length === 0 && anchorM === 0;
}

import { COMPARTMENTS } from '../tissue/coefficients';
import { tissuesAfter } from '../tissue/tissues';
import { breathedAt } from './breathed';
import { NO_STOP_CAP_MIN } from './no-stop';
import type { AscentSite, AscentStart, Schedule } from './schedule';

const SEARCH_END_MIN = 1e-6;

/**
 * No-stop time with credit for the ascent: minutes until a direct ascent at the plan's rate, begun then, would need a
 * stop. Found by halving to a millionth of a minute; Infinity beyond the cap, 0 if a stop is needed already.
 */
export function creditedNoStopMin(planAscent: (start: AscentStart) => Schedule, site: AscentSite, start: AscentStart): number {
  const breathed = breathedAt(site, start.gas, site.surfaceBar + start.depthM * site.barPerMetre);
  const tissues = {
    nitrogenBar: start.nitrogenBar.slice(start.at, start.at + COMPARTMENTS),
    heliumBar: start.heliumBar.slice(start.at, start.at + COMPARTMENTS),
  };
  const direct = (minutes: number) =>
    planAscent({ ...start, ...tissuesAfter(tissues, site.compartments, breathed, minutes), at: 0 }).stops.length === 0;
  if (!direct(0)) return 0;
  if (direct(NO_STOP_CAP_MIN)) return Infinity;
  let before = 0;
  let after = NO_STOP_CAP_MIN;
  while (after - before > SEARCH_END_MIN) {
    const middle = (before + after) / 2;
    if (direct(middle)) before = middle;
    else after = middle;
  }
  return before;
}

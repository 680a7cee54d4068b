import { COMPARTMENTS } from '../tissue/coefficients';
import { tissuesAfter } from '../tissue/tissues';
import { breathedAt } from './breathed';
import { NO_STOP_CAP_MIN, type Breathed } from './no-stop';
import type { AscentSite, AscentStart, Schedule } from './schedule';

const SEARCH_STEP_MIN = 1;
const SEARCH_END_MIN = 1e-6;

/**
 * No-stop time with credit for the ascent: minutes until a direct ascent at the plan's rate, begun then, would first need
 * a stop. Found to a millionth of a minute; Infinity beyond the cap, 0 if a stop is needed already.
 *
 * While the line from low to high begins at one depth, waiting only makes the way up harder. But the line begins at a
 * whole step of depth, and when the ceiling passes one and the line moves down, the way may be free again for a
 * while. So each stretch of time with one first stop is looked at to its end.
 */
export function creditedNoStopMin(
  planAscent: (start: AscentStart) => Schedule,
  site: AscentSite,
  start: AscentStart,
): number {
  const breathed = breathedAt(site, start.gas, site.surfaceBar + start.depthM * site.barPerMetre);
  const tissues = {
    nitrogenBar: start.nitrogenBar.slice(start.at, start.at + COMPARTMENTS),
    heliumBar: start.heliumBar.slice(start.at, start.at + COMPARTMENTS),
  };
  const after = (minutes: number) =>
    planAscent({ ...start, ...tissuesAfter(tissues, site.compartments, breathed, minutes), at: 0 });
  const direct = (minutes: number) => after(minutes).stops.length === 0;
  let schedule = after(0);
  if (schedule.stops.length > 0) return 0;
  if (neverAsks(planAscent, start, breathed)) return Infinity;
  for (let minutes = 0; minutes < NO_STOP_CAP_MIN; minutes += SEARCH_STEP_MIN) {
    const next = minutes + SEARCH_STEP_MIN;
    const later = after(next);
    const { firstStopM } = schedule;
    if (later.firstStopM !== firstStopM) {
      const turn = lastWhile((m) => after(m).firstStopM === firstStopM, minutes, next);
      if (!direct(turn)) return lastWhile(direct, minutes, turn);
    }
    if (later.stops.length > 0) return lastWhile(direct, minutes, next);
    schedule = later;
  }
  return Infinity;
}

/**
 * Whether even compartments as full as they can get here leave the way up free. Tensions stay between what they are and
 * what is breathed, and more nitrogen never makes a way up easier; with helium the limits move with the mixture, so
 * that this is not said of it.
 */
function neverAsks(
  planAscent: (start: AscentStart) => Schedule,
  start: AscentStart,
  { nitrogenBar, heliumBar }: Breathed,
): boolean {
  const tensions = (of: Float64Array) => of.subarray(start.at, start.at + COMPARTMENTS);
  if (heliumBar > 0 || tensions(start.heliumBar).some((tension) => tension > 0)) return false;
  const full = tensions(start.nitrogenBar).map((tension) => Math.max(tension, nitrogenBar));
  const { stops, firstStopM } = planAscent({
    ...start,
    nitrogenBar: full,
    heliumBar: tensions(start.heliumBar),
    at: 0,
  });
  return stops.length === 0 && firstStopM === 0;
}

/** The last moment at which something holds that holds at `from` and no longer at `to`, by halving. */
function lastWhile(holds: (minutes: number) => boolean, from: number, to: number): number {
  let before = from;
  let after = to;
  while (after - before > SEARCH_END_MIN) {
    const middle = (before + after) / 2;
    if (holds(middle)) before = middle;
    else after = middle;
  }
  return before;
}

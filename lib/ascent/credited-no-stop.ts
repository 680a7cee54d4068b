import type { GradientFactors } from '../dive/dive';
import { COMPARTMENTS } from '../tissue/coefficients';
import { lineAlong } from './anchor';
import { breathedAt } from './breathed';
import { changeBetween, GasPath } from './gas-path';
import { type Breathed } from './no-stop';
import { NO_STOP_CAP_MIN } from './no-stop-cap';
import type { AscentPlanner, AscentSite, AscentStart } from './schedule';

const SEARCH_STEP_MIN = 1;

/**
 * No-stop time with credit for the ascent: minutes until a direct ascent at the plan's rate, begun then, would first need
 * a stop. Infinity beyond the cap, 0 if a stop is needed already; deep or slow it may be shorter than the time without
 * credit, where the way up itself takes up gas. Looked for a minute at a time from when the diver came to this depth, so
 * that it runs down a minute a minute, and then found exactly.
 */
export function creditedNoStopMin(
  planAscent: AscentPlanner,
  site: AscentSite,
  start: AscentStart,
  gradientFactors: GradientFactors,
): number {
  const breathed = breathedAt(site, start.gas, site.surfaceBar + start.depthM * site.barPerMetre);
  const needsStop = (minutes: number) =>
    planAscent(startAfter(site, start, gradientFactors, breathed, minutes), gradientFactors, true).stops.length > 0;
  if (needsStop(0)) return 0;
  if (neverAsks(planAscent, start, gradientFactors, breathed)) return Infinity;
  let before = 0;
  const goneMin = (start.stayedMin ?? 0) % SEARCH_STEP_MIN;
  for (let after = SEARCH_STEP_MIN - goneMin; before < NO_STOP_CAP_MIN; after += SEARCH_STEP_MIN) {
    if (needsStop(after)) return changeBetween(needsStop, before, after);
    before = after;
  }
  return Infinity;
}

/** Where an ascent begins after some more minutes at this depth, with the anchor reached by then. */
export function startAfter(
  site: AscentSite,
  start: AscentStart,
  gradientFactors: GradientFactors,
  { nitrogenBar, heliumBar }: Breathed,
  minutes: number,
): AscentStart {
  const path = new GasPath(site.compartments, site.surfaceBar);
  const along = {
    nitrogenStartBar: nitrogenBar,
    nitrogenEndBar: nitrogenBar,
    heliumStartBar: heliumBar,
    heliumEndBar: heliumBar,
  };
  path.begin(start.nitrogenBar, start.heliumBar, start.at, 1, along, minutes);
  const { low, high } = gradientFactors;
  const anchorBar = start.anchorM * site.barPerMetre;
  const line =
    low < high && minutes > 0 ? lineAlong(path, gradientFactors, { bound: anchorBar > 0, anchorBar })! : undefined;
  return {
    depthM: start.depthM,
    gas: start.gas,
    nitrogenBar: Float64Array.from({ length: COMPARTMENTS }, (_, c) => path.nitrogenAt(c, minutes)),
    heliumBar: Float64Array.from({ length: COMPARTMENTS }, (_, c) => path.heliumAt(c, minutes)),
    at: 0,
    anchorM: line ? line.anchorBar / site.barPerMetre : start.anchorM,
    stayedMin: (start.stayedMin ?? 0) + minutes,
  };
}

/**
 * Whether even compartments as full as they can get here leave the way up free. Tensions stay between what they are and
 * what is breathed, and more nitrogen never makes a way up easier; with helium the limits move with the mixture, so
 * that this is not said of it.
 */
function neverAsks(
  planAscent: AscentPlanner,
  start: AscentStart,
  gradientFactors: GradientFactors,
  { nitrogenBar, heliumBar }: Breathed,
): boolean {
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

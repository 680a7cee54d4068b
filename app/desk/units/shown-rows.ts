import { gasName } from '@/lib/physics/gas';
import { printDepth, printStopDepth } from '@/lib/quantity/depth';
import { printClock, printHours } from '@/lib/quantity/duration';
import { printRate } from '@/lib/quantity/rate';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { SAFETY_STOP_MEANINGS } from '@/lib/rules/safety-stop-state';
import type { Shown, StopShown } from '@/lib/rules/shown';
import { ascentMinutesText } from '../print-figures';

export interface ShownRow {
  readonly label: string;
  /** What a unit shows, in words. */
  say(shown: Shown, units: UnitSystem): string;
}

const NOT_SHOWN = 'not shown';

/** All that units show, a row each, in the words of one column. */
export const SHOWN_ROWS: readonly ShownRow[] = [
  { label: 'Mode', say: ({ mode }) => mode },
  { label: 'Depth', say: ({ depthM }, units) => printDepth(depthM, units) },
  { label: 'Dive time', say: ({ diveTimeS }) => printClock(diveTimeS) },
  { label: 'Greatest depth', say: ({ maxDepthM }, units) => printDepth(maxDepthM, units) },
  { label: 'Gas', say: ({ gas }) => (gas ? gasName(gas) : NOT_SHOWN) },
  { label: 'Rate', say: rateText },
  { label: 'No-stop time', say: (shown) => noStopText(shown) },
  { label: 'Ceiling', say: ({ ceilingM, mode }, units) => (ceilingM === null ? (mode === 'dive' ? 'none' : NOT_SHOWN) : printDepth(ceilingM, units)) },
  { label: 'Required stop', say: ({ requiredStop, mode }, units) => stopText(requiredStop, mode, units) },
  { label: 'Imposed stop', say: ({ imposedStop, mode }, units) => stopText(imposedStop, mode, units) },
  { label: 'Time to surface', say: ({ timeToSurfaceMin }) => (timeToSurfaceMin === null ? NOT_SHOWN : `${ascentMinutesText(timeToSurfaceMin)} min`) },
  { label: 'Safety stop', say: ({ safetyStop }) => (safetyStop ? `${safetyStop.state}, ${printClock(safetyStop.leftS)} left` : 'none') },
  { label: 'Alarms', say: ({ alarms }) => alarms.map(({ text }) => text).join(' ') || 'none' },
  { label: 'No flying for', say: ({ noFlyH }) => (noFlyH === null ? NOT_SHOWN : printHours(noFlyH * 3600)) },
  { label: 'Desaturated in', say: ({ desaturationH }) => (desaturationH === null ? NOT_SHOWN : printHours(desaturationH * 3600)) },
  { label: 'Locked for', say: ({ lockedForS }) => (lockedForS === null ? 'not locked' : printHours(lockedForS)) },
];

export function rateText({ rateMMin, rateLevel }: Shown, units: UnitSystem): string {
  if (rateMMin === null) return NOT_SHOWN;
  if (Math.abs(rateMMin) < 0.05) return 'steady';
  return `${rateMMin > 0 ? 'up' : 'down'} ${printRate(Math.abs(rateMMin), units)}${rateMMin > 0 && rateLevel !== 'easy' ? `, ${rateLevel}` : ''}`;
}

function noStopText({ noStopMin, noStopOverCap, mode }: Shown): string {
  if (noStopOverCap) return 'more than 99 min';
  if (noStopMin === null) return mode === 'dive' ? 'none left' : NOT_SHOWN;
  return `${Math.floor(noStopMin + 1e-9)} min`;
}

function stopText(stop: StopShown | null, mode: Shown['mode'], units: UnitSystem): string {
  if (stop) return `${Math.ceil(stop.minutes - 1e-9)} min at ${printStopDepth(stop.depthM, units)}`;
  return mode === 'dive' ? 'none' : NOT_SHOWN;
}

export function safetyStopMeaning(shown: Shown): string {
  return shown.safetyStop ? SAFETY_STOP_MEANINGS[shown.safetyStop.state] : SAFETY_STOP_MEANINGS.none;
}

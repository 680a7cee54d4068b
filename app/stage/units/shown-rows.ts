import { gasName } from '@/lib/physics/gas';
import { printDepth, printStopDepth } from '@/lib/quantity/depth';
import { printClock, printHours } from '@/lib/quantity/duration';
import { printRate } from '@/lib/quantity/rate';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { SAFETY_STOP_MEANINGS } from '@/lib/rules/safety-stop-state';
import type { Shown, StopShown } from '@/lib/rules/unit/shown';
import type { UnitReadingId } from '@/lib/working/rules/unit-all';
import { ascentMinutesText } from '../../pictures/print-figures';

export interface ShownRow {
  readonly label: string;
  /** What a unit shows, in words. */
  say(shown: Shown, units: UnitSystem): string;
  /** What a unit can be asked about it, where it shows a figure. */
  readonly why?: { readonly reading: UnitReadingId; readonly about: string; shows(shown: Shown): boolean };
}

const NOT_SHOWN = 'not shown';

/** All that units show, a row each, in the words of one column. */
export const SHOWN_ROWS: readonly ShownRow[] = [
  { label: 'Mode', say: ({ mode }) => mode },
  { label: 'Depth', say: ({ depthM }, units) => printDepth(depthM, units) },
  { label: 'Dive time', say: ({ diveTimeS }) => printClock(diveTimeS) },
  { label: 'Greatest depth', say: ({ maxDepthM }, units) => printDepth(maxDepthM, units) },
  { label: 'Gas', say: ({ gas }) => (gas ? gasName(gas) : NOT_SHOWN) },
  {
    label: 'Rate',
    say: rateText,
    why: { reading: 'rate', about: 'this rate', shows: ({ rateMMin }) => rateMMin !== null },
  },
  {
    label: 'No-stop time',
    say: (shown) => noStopText(shown),
    why: { reading: 'no-stop', about: 'this no-stop time', shows: isUnderWater },
  },
  {
    label: 'Ceiling',
    say: ({ ceilingM, mode }, units) =>
      ceilingM === null ? (mode === 'dive' ? 'none' : NOT_SHOWN) : printDepth(ceilingM, units),
    why: { reading: 'ceiling', about: 'this ceiling', shows: isUnderWater },
  },
  {
    label: 'Required stop',
    say: ({ requiredStop, mode }, units) => stopText(requiredStop, mode, units),
    why: { reading: 'required-stop', about: 'this required stop', shows: isUnderWater },
  },
  {
    label: 'Imposed stop',
    say: ({ imposedStop, mode }, units) => stopText(imposedStop, mode, units),
    why: { reading: 'imposed-stop', about: 'this imposed stop', shows: ({ imposedStop }) => imposedStop !== null },
  },
  {
    label: 'Time to surface',
    say: ({ timeToSurfaceMin }) =>
      timeToSurfaceMin === null ? NOT_SHOWN : `${ascentMinutesText(timeToSurfaceMin)} min`,
    why: {
      reading: 'time-to-surface',
      about: 'this time to surface',
      shows: ({ timeToSurfaceMin }) => timeToSurfaceMin !== null,
    },
  },
  {
    label: 'Safety stop',
    say: ({ safetyStop }) => (safetyStop ? `${safetyStop.state}, ${printClock(safetyStop.leftS)} left` : 'none'),
    why: { reading: 'safety-stop', about: 'this safety stop', shows: ({ safetyStop }) => safetyStop !== null },
  },
  { label: 'Alarms', say: ({ alarms }) => alarms.map(({ text }) => text).join(' ') || 'none' },
  {
    label: 'No flying for',
    say: ({ noFlyH }) => (noFlyH === null ? NOT_SHOWN : printHours(noFlyH * 3600)),
    why: { reading: 'no-fly', about: 'this wait before flying', shows: ({ noFlyH }) => noFlyH !== null },
  },
  {
    label: 'Desaturated in',
    say: ({ desaturationH }) => (desaturationH === null ? NOT_SHOWN : printHours(desaturationH * 3600)),
    why: {
      reading: 'desaturation',
      about: 'this time until desaturated',
      shows: ({ desaturationH }) => desaturationH !== null,
    },
  },
  { label: 'Locked for', say: ({ lockedForS }) => (lockedForS === null ? 'not locked' : printHours(lockedForS)) },
];

function isUnderWater({ mode }: Shown): boolean {
  return mode === 'dive';
}

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

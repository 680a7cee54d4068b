import { gasName } from '../physics/gas';
import { printRate } from '../quantity/rate';
import { SAFETY_STOP_MEANINGS } from '../rules/safety-stop-state';
import type { Shown } from '../rules/unit/shown';
import type { UnitSystem } from '../quantity/unit-system';
import { printAs } from './measures';
import { NOT_SHOWN, sayAll, type Reading, type Saying } from './saying';
import { stopStateOf, type StopState } from '../ascent/stop-state';
import { sayStop } from './stop-state';

/** Slower than this a unit shows no rate, m/min. */
const STEADY_M_MIN = 0.05;

const word = (name: string, of: (shown: Shown) => string): Reading<Shown> => ({
  measure: null,
  name,
  words: of,
});

/** What a unit shows at an instant: one line a reading, in the order of a table. */
const UNIT_READINGS = {
  mode: word('Mode', ({ mode }) => mode),
  depth: { measure: 'depth', figure: ({ depthM }) => depthM },
  'dive-time': { measure: 'diveTimeS', figure: ({ diveTimeS }) => diveTimeS },
  'greatest-depth': { measure: 'greatestDepth', figure: ({ maxDepthM }) => maxDepthM },
  gas: word('Gas', ({ gas }) => (gas ? gasName(gas) : NOT_SHOWN)),
  rate: {
    measure: 'rateMMin',
    figure: ({ rateMMin }) => rateMMin,
    text: rateText,
    note: (shown) => `${rateWay(shown)}; ${breachesNote(shown)}`,
    tone: ({ rateLevel }) => (rateLevel === 'too fast' || rateLevel === 'far too fast' ? 'rule' : 'plain'),
  },
  'no-stop': {
    measure: 'noStopMin',
    figure: ({ noStopMin, noStopOverCap }) => (noStopOverCap ? Infinity : noStopMin),
    words: (shown) => (stopStateShown(shown) === 'filling' ? 'none' : undefined),
  },
  ceiling: {
    measure: 'ceilingM',
    figure: ({ ceilingM, mode }) => ceilingM ?? (mode === 'dive' ? 0 : null),
    tone: ({ ceilingM }) => (ceilingM === null ? 'plain' : 'stop'),
  },
  'required-stop': {
    measure: 'stopM',
    figure: ({ requiredStop, mode }) => requiredStop?.depthM ?? (mode === 'dive' ? 0 : null),
    text: ({ requiredStop }, system) => (requiredStop ? sayStop(requiredStop, system) : undefined),
    tone: ({ requiredStop }) => (requiredStop ? 'stop' : 'plain'),
  },
  'imposed-stop': {
    measure: 'imposedStopS',
    figure: ({ imposedStop }) => (imposedStop ? imposedStop.minutes * 60 : null),
    words: ({ imposedStop, mode }) => (!imposedStop && mode === 'dive' ? 'none' : undefined),
    text: ({ imposedStop }, system) =>
      imposedStop
        ? `${printAs('imposedStopS', imposedStop.minutes * 60, system)} left at ${printAs('stopM', imposedStop.depthM, system)}`
        : undefined,
    note: ({ imposedStop }, system) =>
      imposedStop ? `at ${printAs('stopM', imposedStop.depthM, system)}, a rule’s demand` : '',
    tone: () => 'rule',
  },
  'time-to-surface': { measure: 'timeToSurfaceMin', figure: ({ timeToSurfaceMin }) => timeToSurfaceMin },
  'safety-stop': {
    measure: 'safetyStopS',
    figure: ({ safetyStop }) => safetyStop?.leftS ?? null,
    words: ({ safetyStop }) => (safetyStop ? undefined : 'none'),
    text: ({ safetyStop }, system) =>
      safetyStop ? `${safetyStop.state}, ${printAs('safetyStopS', safetyStop.leftS, system)} left` : undefined,
    note: safetyStopNote,
  },
  alarms: word('Alarms', ({ alarms }) => alarms.map(({ text }) => text).join(' ') || 'none'),
  'no-fly': { measure: 'noFlyH', figure: ({ noFlyH }) => noFlyH, note: () => 'guideline or model, the longer' },
  desaturation: { measure: 'desaturationH', figure: ({ desaturationH }) => desaturationH },
  locked: {
    measure: 'lockedH',
    figure: ({ lockedForS }) => (lockedForS === null ? null : lockedForS / 3600),
    words: ({ lockedForS }) => (lockedForS === null ? 'not locked' : undefined),
  },
} as const satisfies Readonly<Record<string, Reading<Shown>>>;

export type UnitReadingId = keyof typeof UNIT_READINGS;

/** How the diver stands towards stops, as the unit has it; undefined where it works nothing out. */
export function stopStateShown({ mode, ceilingM, requiredStop }: Shown): StopState | undefined {
  return mode === 'dive' ? stopStateOf(ceilingM ?? 0, requiredStop !== null) : undefined;
}

/** What a unit shows, by reading; `not shown` in place of what it does not display. */
export function unitSayings(shown: Shown, system: UnitSystem): Readonly<Record<UnitReadingId, Saying>> {
  return sayAll<UnitReadingId, Shown>(UNIT_READINGS, shown, system);
}

function rateText({ rateMMin, rateLevel }: Shown, system: UnitSystem): string | undefined {
  if (rateMMin === null) return undefined;
  if (Math.abs(rateMMin) < STEADY_M_MIN) return 'steady';
  const way = rateMMin > 0 ? 'up' : 'down';
  return `${way} ${printRate(Math.abs(rateMMin), system)}${rateMMin > 0 && rateLevel !== 'easy' ? `, ${rateLevel}` : ''}`;
}

function rateWay({ rateMMin, rateLevel }: Shown): string {
  if (Math.abs(rateMMin ?? 0) < STEADY_M_MIN) return 'steady';
  return rateMMin! < 0 ? 'down' : `up, ${rateLevel}`;
}

/** Why there is none is said only where no other stop stands in its place. */
function safetyStopNote({ safetyStop, mode, ceilingM, requiredStop, imposedStop }: Shown): string {
  if (safetyStop) return `${safetyStop.state}. ${SAFETY_STOP_MEANINGS[safetyStop.state]}`;
  return mode === 'dive' && ceilingM === null && !requiredStop && !imposedStop ? SAFETY_STOP_MEANINGS.none : '';
}

function breachesNote({ breaches }: Shown): string {
  if (!breaches) return 'no breach on this dive';
  return breaches === 1 ? 'one breach on this dive' : `${breaches} breaches on this dive`;
}

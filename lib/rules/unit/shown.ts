import { SAME_DEPTH_M } from '../../ascent/ceiling';
import { NO_STOP_CAP_MIN } from '../../ascent/no-stop-cap';
import type { Schedule } from '../../ascent/plan/schedule';
import { gasAt } from '../../dive/timeline';
import type { Gas } from '../../physics/gas';
import type { UnitSystem } from '../../quantity/unit-system';
import { alarmsShown, type AlarmShown } from './alarms-shown';
import { afterDiveAt, hasSurfaced } from '../surface/after-dive';
import { RATE_LEVELS, type RateLevel } from '../rate-watch';
import { SAFETY_STOP_STATES, type SafetyStopState } from '../safety-stop-state';
import { isAsked } from '../safety-stop';
import { scheduleAt } from './schedule-at';
import { figuresInForce, type Watch } from '../watch';

interface StopShown {
  readonly depthM: number;
  readonly minutes: number;
}

/** All that a unit displays at a sample. What it does not display is null. */
export interface Shown {
  readonly mode: 'dive' | 'gauge' | 'locked out' | 'surface';
  readonly depthM: number;
  /** Of the dive under way; at the surface, of the last one. */
  readonly diveTimeS: number;
  readonly maxDepthM: number;
  /** Since surfacing; null under water and before the first dive. */
  readonly surfaceTimeS: number | null;
  readonly gas: Gas | null;
  /** Averaged speed, m/min, positive upward. */
  readonly rateMMin: number | null;
  readonly rateLevel: RateLevel | null;
  /** Breaches of the rate limit on this dive. */
  readonly breaches: number | null;
  /** Minutes; null where it is not shown and where it is longer than units show, which `noStopOverCap` tells apart. */
  readonly noStopMin: number | null;
  readonly noStopOverCap: boolean;
  /** Null while the model has no ceiling. */
  readonly ceilingM: number | null;
  /** The first of `requiredStops`. Null with a ceiling too where going up at the plan's rate clears it on the way; there without a ceiling yet where the way up takes up gas enough. */
  readonly requiredStop: StopShown | null;
  /** The model's stops, deepest first. */
  readonly requiredStops: readonly StopShown[];
  /** With all stops, an imposed one too; Infinity where a stop would never end. */
  readonly timeToSurfaceMin: number | null;
  /** A stop that a rule demands, not the model. */
  readonly imposedStop: StopShown | null;
  /** Null while none is advised, and while a stop that must be made comes first. */
  readonly safetyStop: {
    readonly state: SafetyStopState;
    readonly leftS: number;
    readonly idealM: number;
  } | null;
  /** The high gradient factor a penalty has brought the unit to; null while it goes by its own. */
  readonly tightenedHigh: number | null;
  readonly alarms: readonly AlarmShown[];
  /** Hours still to wait before flying; null before any dive, under water, and where no rule counts them. */
  readonly noFlyH: number | null;
  /** Hours until no compartment holds more than at rest; null before any dive and under water. */
  readonly desaturationH: number | null;
  /** Left of the lock; null while not locked. */
  readonly lockedForS: number | null;
}

/** What the unit displays at one sample of its timeline; alarms are worded in the units a person reads. */
export function shownAt(watch: Watch, sample: number, system: UnitSystem = 'metric'): Shown {
  const { tracks, timeline, setup, rules } = watch;
  const depthM = timeline.depthM[sample]!;
  const bare: Shown = {
    mode: 'gauge',
    depthM,
    diveTimeS: tracks.diveTimeS[sample]!,
    maxDepthM: tracks.maxDepthM[sample]!,
    surfaceTimeS: hasSurfaced(watch, sample) ? tracks.surfaceTimeS[sample]! : null,
    ...NOTHING,
  };
  if (setup.mode === 'gauge') return bare;
  const lockedUntilS = tracks.lockedUntilS[sample]!;
  if (lockedUntilS > 0) return { ...bare, mode: 'locked out', lockedForS: lockedUntilS - timeline.timeS[sample]! };
  const speed = rules.rateWatch.on
    ? {
        rateMMin: tracks.rateMMin[sample]!,
        rateLevel: RATE_LEVELS[tracks.rateLevel[sample]!]!,
        breaches: tracks.breaches[sample]!,
      }
    : {};
  const working = { ...bare, ...speed, gas: gasAt(timeline, sample), alarms: alarmsShown(watch, sample, system) };
  return depthM <= 0
    ? { ...working, mode: 'surface', ...afterDive(watch, sample) }
    : { ...working, mode: 'dive', ...underWater(watch, sample) };
}

const NOTHING = {
  gas: null,
  rateMMin: null,
  rateLevel: null,
  breaches: null,
  noStopMin: null,
  noStopOverCap: false,
  ceilingM: null,
  requiredStop: null,
  requiredStops: [],
  timeToSurfaceMin: null,
  imposedStop: null,
  safetyStop: null,
  tightenedHigh: null,
  alarms: [],
  noFlyH: null,
  desaturationH: null,
  lockedForS: null,
} as const;

function underWater(watch: Watch, sample: number): Partial<Shown> {
  const { tracks, rules } = watch;
  const tightness = tracks.tightness[sample]!;
  const figures = figuresInForce(watch, sample);
  const ceilingM = figures.ceilingM[sample]!;
  const noStopMin = figures.noStopMin[sample]!;
  const imposedStop = imposedStopAt(watch, sample);
  const schedule = rules.requiredStops.on ? scheduleAt(watch, sample) : null;
  const stops = schedule ? schedule.stops.map(({ depthM, minutes }) => ({ depthM, minutes })) : [];
  return {
    noStopMin: noStopMin <= NO_STOP_CAP_MIN ? noStopMin : null,
    noStopOverCap: noStopMin > NO_STOP_CAP_MIN,
    ceilingM: ceilingM > 0 ? ceilingM : null,
    requiredStop: stops[0] ?? null,
    requiredStops: stops,
    timeToSurfaceMin: schedule ? timeToSurfaceMin(schedule, imposedStop) : null,
    imposedStop,
    safetyStop: ceilingM > 0 || imposedStop ? null : safetyStopAt(watch, sample),
    tightenedHigh: tightness > 0 ? figures.limits.gradientFactors.high : null,
  };
}

function imposedStopAt({ tracks }: Watch, sample: number): StopShown | null {
  const depthM = tracks.imposedStopM[sample]!;
  return depthM > 0 ? { depthM, minutes: tracks.imposedStopLeftS[sample]! / 60 } : null;
}

/** An imposed stop and a model's stop at one depth are made together; elsewhere the imposed one comes on top. */
function timeToSurfaceMin(schedule: Schedule, imposed: StopShown | null): number {
  if (!imposed) return schedule.timeToSurfaceMin;
  const together = schedule.stops.find(({ depthM }) => Math.abs(depthM - imposed.depthM) < SAME_DEPTH_M)?.minutes ?? 0;
  return schedule.timeToSurfaceMin + Math.max(0, imposed.minutes - together);
}

function safetyStopAt({ tracks, rules }: Watch, sample: number): Shown['safetyStop'] {
  const state = SAFETY_STOP_STATES[tracks.safetyStop[sample]!]!;
  if (!isAsked(state) && state !== 'done') return null;
  return { state, leftS: tracks.safetyStopLeftS[sample]!, idealM: rules.safetyStop.idealM };
}

function afterDive(watch: Watch, sample: number): Partial<Shown> {
  const after = afterDiveAt(watch, sample);
  return after
    ? {
        noFlyH: watch.rules.flyingWait.on ? after.flying.hoursLeft : null,
        desaturationH: after.desaturation.minutes / 60,
      }
    : {};
}

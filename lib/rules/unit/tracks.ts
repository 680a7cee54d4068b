import { reusedBytes, reusedFloats } from '../../dive/reused-array';
import { SAFETY_STOP_STATES } from '../safety-stop-state';
import type { Unit } from './unit';

/** What the rules made of every sample: one value per sample, metres, seconds, m/min. */
export interface Tracks {
  /** 1 where the unit looked; between two looks it stands as at the first of them. */
  readonly looked: Uint8Array;
  /** Averaged speed, positive upward. */
  readonly rateMMin: Float64Array;
  /** Index into `RATE_LEVELS`. */
  readonly rateLevel: Uint8Array;
  /** Breaches of the rate limit on this dive so far. */
  readonly breaches: Uint8Array;
  readonly maxDepthM: Float64Array;
  /** Since this dive began; at the surface after it, how long it was. */
  readonly diveTimeS: Float64Array;
  /** Since surfacing; 0 under water and before the first dive. */
  readonly surfaceTimeS: Float64Array;
  /** Index into `SAFETY_STOP_STATES`. */
  readonly safetyStop: Uint8Array;
  readonly safetyStopLeftS: Float64Array;
  /** Depth of a stop a rule imposes, and what is left of it; 0 where there is none. */
  readonly imposedStopM: Float64Array;
  readonly imposedStopLeftS: Float64Array;
  /** How many times the limits are drawn in: index into the watch's `limits`. */
  readonly tightness: Uint8Array;
  /** When the lock ends, s; 0 where the unit is not locked. */
  readonly lockedUntilS: Float64Array;
  /** Bits in the order of `ALARM_KINDS`. */
  readonly alarms: Uint8Array;
  /** How many dives have begun, and how many of them, the latest, the unit remembers. */
  readonly divesBegun: Uint8Array;
  readonly divesKnown: Uint8Array;
}

/** Room for so many samples, in the memory of tracks no longer needed where it fits. */
export function roomForTracks(length: number, reuse?: Tracks): Tracks {
  return {
    looked: reusedBytes(reuse?.looked, length),
    rateMMin: reusedFloats(reuse?.rateMMin, length),
    rateLevel: reusedBytes(reuse?.rateLevel, length),
    breaches: reusedBytes(reuse?.breaches, length),
    maxDepthM: reusedFloats(reuse?.maxDepthM, length),
    diveTimeS: reusedFloats(reuse?.diveTimeS, length),
    surfaceTimeS: reusedFloats(reuse?.surfaceTimeS, length),
    safetyStop: reusedBytes(reuse?.safetyStop, length),
    safetyStopLeftS: reusedFloats(reuse?.safetyStopLeftS, length),
    imposedStopM: reusedFloats(reuse?.imposedStopM, length),
    imposedStopLeftS: reusedFloats(reuse?.imposedStopLeftS, length),
    tightness: reusedBytes(reuse?.tightness, length),
    lockedUntilS: reusedFloats(reuse?.lockedUntilS, length),
    alarms: reusedBytes(reuse?.alarms, length),
    divesBegun: reusedBytes(reuse?.divesBegun, length),
    divesKnown: reusedBytes(reuse?.divesKnown, length),
  };
}

/** Writes down how the unit stands at a sample, whether it looks there or stands as it did. */
export function track(tracks: Tracks, unit: Unit, sample: number, looks: boolean): void {
  const { dive, timeline } = unit;
  const timeS = timeline.timeS[sample]!;
  const atSurface = timeline.depthM[sample]! <= 0;
  const endS = atSurface ? (dive?.surfacedS ?? timeS) : timeS;
  tracks.looked[sample] = looks ? 1 : 0;
  tracks.rateLevel[sample] = unit.rateLevel;
  tracks.breaches[sample] = dive?.breaches ?? 0;
  tracks.maxDepthM[sample] = dive?.maxDepthM ?? 0;
  tracks.diveTimeS[sample] = dive ? endS - dive.startS : 0;
  tracks.surfaceTimeS[sample] = timeS - endS;
  tracks.safetyStop[sample] = SAFETY_STOP_STATES.indexOf(unit.safetyStop);
  tracks.safetyStopLeftS[sample] = unit.safetyStopLeftS;
  tracks.imposedStopM[sample] = unit.imposedStopM;
  tracks.imposedStopLeftS[sample] = unit.imposedStopLeftS;
  tracks.tightness[sample] = unit.tightness;
  tracks.lockedUntilS[sample] = unit.lockedUntilS;
  tracks.alarms[sample] = unit.alarms;
  tracks.divesBegun[sample] = unit.dives.length;
  tracks.divesKnown[sample] = unit.divesKnown;
}

import { altitudeWait, type AltitudeWait } from './altitude-wait';
import { desaturation, surfaceWashout, type Washout } from './desaturation';
import { flyingGuideline } from './flying-guideline';
import { sampleAt } from '../../dive/timeline';
import { noStopRecovery, type NextDive, type NoStopRecovery } from './no-stop-recovery';
import type { Wait } from './surface-interval';
import type { DiveSeen } from '../unit/unit';
import type { Watch } from '../watch';

/** What someone has in mind after the dive. */
export interface Plans {
  readonly next?: NextDive | undefined;
  /** A pass to be driven over, or a place to go to, m. */
  readonly driveToM?: number | undefined;
}

/** Everything a unit can say of the time after its dives. */
export interface AfterDive {
  readonly sinceSurfacedS: number;
  readonly washout: readonly Washout[];
  readonly desaturation: Wait;
  readonly flying: AltitudeWait;
  readonly drive: AltitudeWait | null;
  readonly recovery: NoStopRecovery | null;
}

/** What follows from the dives a unit knows of, at a sample at the surface; null under water and where it knows of none. */
export function afterDiveAt(watch: Watch, sample: number, { next, driveToM }: Plans = {}): AfterDive | null {
  const { timeline, figures, tracks, rules } = watch;
  const { high } = figures.limits.gradientFactors;
  const dives = divesKnownAt(watch, sample);
  if (dives.length === 0 || !hasSurfaced(watch, sample)) return null;
  const sinceSurfacedS = tracks.surfaceTimeS[sample]!;
  const guideline = flyingGuideline(dives, rules.flyingWait.requiredStopsH);
  return {
    sinceSurfacedS,
    washout: surfaceWashout(timeline, sampleAt(timeline, timeline.timeS[sample]! - sinceSurfacedS), sample),
    desaturation: desaturation(timeline, sample),
    flying: altitudeWait(timeline, high, sample, rules.flyingWait.cabinM, guideline, sinceSurfacedS),
    drive: driveToM === undefined ? null : altitudeWait(timeline, high, sample, driveToM, guideline, sinceSurfacedS),
    recovery: next ? noStopRecovery(timeline, figures.limits, sample, next) : null,
  };
}

/** Whether, at a sample, the dive begun last is over and its diver at the surface. */
export function hasSurfaced({ timeline, tracks, dives }: Watch, sample: number): boolean {
  const surfacedS = dives[tracks.divesBegun[sample]! - 1]?.surfacedS ?? Infinity;
  return timeline.depthM[sample]! <= 0 && surfacedS <= timeline.timeS[sample]!;
}

/** The dives a unit knows of at a sample, the latest last. */
export function divesKnownAt({ dives, tracks }: Watch, sample: number): readonly DiveSeen[] {
  const begun = tracks.divesBegun[sample]!;
  return dives.slice(begun - tracks.divesKnown[sample]!, begun);
}

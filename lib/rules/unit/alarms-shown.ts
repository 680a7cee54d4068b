import { printStopDepth } from '../../quantity/depth';
import type { UnitSystem } from '../../quantity/unit-system';
import { alarmsIn, type AlarmKind } from '../alarms';
import type { Watch } from '../watch';
import { scheduleAt } from './schedule-at';

export interface AlarmShown {
  readonly kind: AlarmKind;
  /** What the unit says, in the second person. */
  readonly text: string;
}

/** The alarms a unit gives at a sample, in words. */
export function alarmsShown(watch: Watch, sample: number, system: UnitSystem): AlarmShown[] {
  return alarmsIn(watch.tracks.alarms[sample]!).map((kind) => ({ kind, text: say(kind, watch, sample, system) }));
}

function say(kind: AlarmKind, watch: Watch, sample: number, system: UnitSystem): string {
  if (kind === 'slow-down') return 'Slow down.';
  if (watch.timeline.depthM[sample]! <= 0) {
    return kind === 'grace-over'
      ? 'The stop you owed counts as left out.'
      : 'You are at the surface with a stop still owed. Follow your training for an omitted stop.';
  }
  if (kind === 'grace-over') return 'Your time above the ceiling is over.';
  const stopM = Math.max(scheduleAt(watch, sample).stops[0]?.depthM ?? 0, watch.tracks.imposedStopM[sample]!);
  return `You are above the ceiling. Go back down to ${printStopDepth(stopM, system)}.`;
}

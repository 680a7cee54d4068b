import { computeTimeline, type Timeline, type TimelineOptions } from '../../dive/timeline';
import { COMPARTMENTS } from '../../tissue/coefficients';
import type { BelievedDive } from './believed-dive';

/**
 * The tissues a unit works out for itself. Where its memory was lost it begins anew settled on air at the altitude it
 * is set to, since it knows nothing of where its diver came from.
 */
export function believedTimeline(
  { dive, freshAtLegs }: BelievedDive,
  everyS: number,
  options: Pick<TimelineOptions, 'reuse' | 'intervalEveryS' | 'alsoEveryS' | 'compartments'>,
): Timeline {
  const timeline = computeTimeline(dive, everyS, { ...options, freshAtLegs });
  const { start, altitudeM } = dive.settings;
  if (freshAtLegs.length === 0 || (start.kind === 'adapted' && start.altitudeM === altitudeM)) return timeline;
  // The model begins anew with the tissues the script begins with; from the first such leg on, another start is true.
  const settled = { ...dive, settings: { ...dive.settings, start: { kind: 'adapted' as const, altitudeM } } };
  const { intervalEveryS, alsoEveryS, compartments } = options;
  const anew = computeTimeline(settled, everyS, { intervalEveryS, alsoEveryS, compartments, freshAtLegs });
  const from = timeline.leg.indexOf(Math.min(...freshAtLegs)) * COMPARTMENTS;
  timeline.nitrogenBar.set(anew.nitrogenBar.subarray(from), from);
  if (timeline.hasHelium) timeline.heliumBar.set(anew.heliumBar.subarray(from), from);
  return timeline;
}

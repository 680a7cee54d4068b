import { gasAt, tissuesAt, type Timeline } from '../dive/timeline';
import type { Figures } from './figures';
import { ascentPlanner, type AscentStart, type Schedule } from './schedule';

/** Where an ascent begun at one sample of a timeline is planned from. */
export function ascentStartAt(
  timeline: Timeline,
  { firstStopM }: Pick<Figures, 'firstStopM'>,
  sample: number,
): AscentStart {
  return {
    depthM: timeline.depthM[sample]!,
    gas: gasAt(timeline, sample),
    ...tissuesAt(timeline, sample),
    at: 0,
    fixedFirstStopM: firstStopM[sample]!,
  };
}

/** The ascent begun at one sample of a timeline, by the plan it is seen under. */
export function plannedAt(
  timeline: Timeline,
  figures: Pick<Figures, 'limits' | 'firstStopM'>,
  sample: number,
): Schedule {
  return ascentPlanner(figures.limits, timeline)(ascentStartAt(timeline, figures, sample));
}

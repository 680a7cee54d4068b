import { ascentStartAt } from '../../ascent/ascent-start';
import { ascentPlanner, type Schedule } from '../../ascent/schedule';
import type { Timeline } from '../../dive/timeline';
import type { Watch } from '../watch';

const planners = new WeakMap<Timeline, ReturnType<typeof ascentPlanner>>();

/** The way up as the unit works it out at a sample, under the limits it goes by there. */
export function scheduleAt(watch: Watch, sample: number): Schedule {
  const { timeline, limits, tracks } = watch;
  const { figures, gradientFactors } = limits[tracks.tightness[sample]!]!;
  let planAscent = planners.get(timeline);
  if (!planAscent) planners.set(timeline, (planAscent = ascentPlanner(timeline.dive.settings, timeline)));
  return planAscent(ascentStartAt(timeline, figures, sample), gradientFactors);
}

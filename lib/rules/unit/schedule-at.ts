import { ascentStartAt } from '../../ascent/plan/ascent-start';
import { ascentPlanner, type Schedule } from '../../ascent/plan/schedule';
import type { Figures } from '../../ascent/figures';
import { figuresInForce, type Watch } from '../watch';

const planners = new WeakMap<Figures, ReturnType<typeof ascentPlanner>>();

/** The way up as the unit works it out at a sample, under the limits it goes by there. */
export function scheduleAt(watch: Watch, sample: number): Schedule {
  const { timeline } = watch;
  const figures = figuresInForce(watch, sample);
  let planAscent = planners.get(figures);
  if (!planAscent) planners.set(figures, (planAscent = ascentPlanner(figures.limits, timeline)));
  return planAscent(ascentStartAt(timeline, figures, sample));
}

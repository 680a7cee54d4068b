import type { Settings } from '../../dive/dive';
import { SAME_DEPTH_M } from '../ceiling';

/*
 * The depths a climb may halt at, numbered upward from the surface: 0 is the surface, 1 the last stop, and from 2 on the
 * multiples of the stop step that are deeper than the last stop.
 */
type Plan = Pick<Settings['plan'], 'stopStepM' | 'lastStopM'>;

/**
 * The depth of a stop level, m: 0 is the surface, 1 the last stop, and those below it lie on multiples of the stop
 * step.
 */
export function levelM(level: number, plan: Plan): number {
  if (level === 0) return 0;
  return level === 1 ? plan.lastStopM : (multiplesUpToLastStop(plan) + level - 1) * plan.stopStepM;
}

/** The next level above a depth: never between the last stop and the surface. */
export function levelAbove(depthM: number, plan: Plan): number {
  if (depthM <= plan.lastStopM + SAME_DEPTH_M) return 0;
  const multiple = Math.ceil((depthM - SAME_DEPTH_M) / plan.stopStepM) - 1;
  return Math.max(1, multiple - multiplesUpToLastStop(plan) + 1);
}

/** The stop at a depth or next below it; the surface is not a stop. */
export function stopAtOrBelow(depthM: number, plan: Plan): number {
  return levelAbove(depthM, plan) + 1;
}

function multiplesUpToLastStop({ stopStepM, lastStopM }: Plan): number {
  return Math.floor(lastStopM / stopStepM + SAME_DEPTH_M);
}

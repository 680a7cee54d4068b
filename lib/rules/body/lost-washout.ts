import { figuresOf, loadAt } from '../../ascent/figures';
import { supersaturation, type Supersaturation } from '../../ascent/supersaturation';
import type { Dive, Step } from '../../dive/dive';
import { computeTimeline, type Timeline } from '../../dive/timeline';

/** How the model stands at the moment of surfacing. */
interface AtSurfacing {
  readonly timeS: number;
  /** The ceiling left, m; 0 where the surface is tolerated. */
  readonly ceilingM: number;
  readonly supersaturation: Supersaturation;
}

/** One dive of the series as it was, and with every climb at the taught rate. */
export interface LostWashout {
  readonly diveNumber: number;
  readonly asDived: AtSurfacing;
  readonly asTaught: AtSurfacing;
  /** What the fast rise left in the body at surfacing, as a difference of supersaturation. */
  readonly lost: number;
}

/** The steps change nothing between them, so their ends say all. */
const LONG_S = 24 * 3600;

/**
 * What the model itself shows of a fast ascent: less time on the way up, less gas lost there. Each dive that comes to
 * the surface is held against the same one with no climb faster than `taughtMMin`. No rule has a part in it.
 */
export function lostWashout(dive: Dive, taughtMMin = 9): LostWashout[] {
  const asDived = surfacings(dive);
  const asTaught = surfacings(withClimbsAtMost(dive, taughtMMin));
  return asDived.map(({ diveNumber, at }, index) => {
    const taught = asTaught[index]!.at;
    return { diveNumber, asDived: at, asTaught: taught, lost: at.supersaturation.value - taught.supersaturation.value };
  });
}

/** The same dive with every climb that is faster than a rate slowed to it. */
export function withClimbsAtMost(dive: Dive, rateMMin: number): Dive {
  let depthM = 0;
  const steps = dive.steps.map((step): Step => {
    if (step.kind !== 'ascend' && step.kind !== 'descend') return step;
    const climbM = depthM - step.toM;
    depthM = step.toM;
    return climbM > 0 ? { ...step, durationS: Math.max(step.durationS, (climbM / rateMMin) * 60) } : step;
  });
  return { ...dive, steps, lines: [] };
}

function surfacings(dive: Dive): { diveNumber: number; at: AtSurfacing }[] {
  const timeline = computeTimeline(dive, LONG_S);
  const figures = figuresOf(timeline, dive.settings);
  const found = new Map<number, { diveNumber: number; at: AtSurfacing }>();
  for (let i = 1; i < timeline.length; i += 1) {
    if (timeline.depthM[i]! > 0 || timeline.depthM[i - 1]! <= 0) continue;
    const { diveNumber } = timeline.legs[timeline.leg[i - 1]!]!;
    found.set(diveNumber, { diveNumber, at: atSurfacing(timeline, figures.ceilingM[i]!, i) });
  }
  return [...found.values()];
}

function atSurfacing(timeline: Timeline, ceilingM: number, sample: number): AtSurfacing {
  return {
    timeS: timeline.timeS[sample]!,
    ceilingM,
    supersaturation: supersaturation(loadAt(timeline, sample), timeline.surfaceBar),
  };
}

import { plannedAt } from '../ascent/plan/ascent-start';
import { figuresOf } from '../ascent/figures';
import type { Schedule } from '../ascent/plan/schedule';
import { LONGEST_S } from '../dive/bounds';
import type { Dive, Settings, Step } from '../dive/dive';
import { legsOf } from '../dive/legs';
import { computeTimeline, gasAt, type Timeline } from '../dive/timeline';
import { sameGas, type Gas } from '../physics/gas';

/** A dive that ends where its ascent begins, and the ascent the model asks for from there. */
export interface AscentPlan {
  /** The day up to that moment; its last step leaves the diver at the deepest point. */
  readonly bottom: Dive;
  /** Time since the day began, s. */
  readonly ascentFromS: number;
  readonly depthM: number;
  readonly gas: Gas;
  readonly schedule: Schedule;
  /** The timeline of `bottom`, sampled at its changes; its last sample is the moment the ascent begins. */
  readonly timeline: Timeline;
}

/**
 * A script up to the last moment at the deepest point of one of its dives (from 0; the last one unless told): what was
 * meant by it before its own ascent. A dive that never leaves the surface is kept whole.
 */
export function bottomOf(dive: Dive, diveNumber?: number): Dive {
  const { legs } = legsOf(dive);
  const number = diveNumber ?? legs.at(-1)!.diveNumber;
  const own = legs.filter((leg) => leg.diveNumber === number && !leg.interval);
  const deepestM = Math.max(...own.map(({ toM }) => toM));
  const last = own.findLast(({ toM }) => toM === deepestM);
  const steps = last ? dive.steps.slice(0, last.step + 1) : dive.steps;
  return { settings: dive.settings, steps, lines: [] };
}

/** Plans the ascent from where a dive ends, under its own settings or changed ones. */
export function planFrom(
  bottom: Dive,
  changes: Partial<Pick<Settings, 'plan' | 'gradientFactors' | 'carried'>> = {},
): AscentPlan {
  const changed = { ...bottom, settings: { ...bottom.settings, ...changes } };
  // Sampled at changes of step alone: the tissues are exact whatever the spacing.
  const timeline = computeTimeline(changed, LONGEST_S);
  const last = timeline.length - 1;
  const gas = gasAt(timeline, last);
  const depthM = timeline.depthM[last]!;
  const schedule = plannedAt(timeline, figuresOf(timeline, changed.settings), last);
  return { bottom: changed, ascentFromS: timeline.timeS[last]!, depthM, gas, schedule, timeline };
}

/** The ascent of a script's dive as the model asks for it, from the last moment at its deepest point. */
export function ascentPlanOf(dive: Dive, diveNumber?: number): AscentPlan {
  return planFrom(bottomOf(dive, diveNumber));
}

/**
 * The whole dive with the planned ascent written out as steps, ready to be computed or written as a script. Where no wait
 * at some stop is ever long enough, it breaks off at that stop.
 */
export function plannedDive({ bottom, schedule, gas }: AscentPlan): Dive {
  const ascent: Step[] = [];
  let breathed = gas;
  for (const part of schedule.parts) {
    if (!sameGas(part.gas, breathed)) ascent.push({ kind: 'switch', gas: { ...part.gas } });
    breathed = part.gas;
    const durationS = part.minutes * 60;
    const last = ascent.at(-1);
    if (durationS === 0) continue;
    if (part.fromM === part.toM) ascent.push({ kind: 'stay', durationS });
    else if (part.toM > part.fromM) ascent.push({ kind: 'descend', toM: part.toM, durationS });
    // Every climb of a schedule has the plan's rate, so climbs in a row are one.
    else if (last?.kind === 'ascend')
      ascent[ascent.length - 1] = { ...last, toM: part.toM, durationS: last.durationS + durationS };
    else ascent.push({ kind: 'ascend', toM: part.toM, durationS });
  }
  return { settings: bottom.settings, steps: [...bottom.steps, ...ascent], lines: [] };
}

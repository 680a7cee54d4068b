import type { AscentSite, AscentStart } from '../ascent/plan/schedule';
import { startsAfter } from '../ascent/plan/start-after';
import type { Dive, Settings, Step } from '../dive/dive';
import { curveSite, rested } from './curve-site';

/** A square dive as far as the end of its time at depth, as plain data. */
export interface BottomPhase {
  /** The diver, the place, the gas breathed, gases carried, limits and plan. */
  readonly settings: Settings;
  readonly depthM: number;
  /** Minutes at depth, from arriving there. */
  readonly minutes: number;
  readonly descentMMin: number;
}

/** What the ascent functions take: the site, the moment of arriving at depth, and the moment of leaving it. */
export interface Bottom {
  readonly site: AscentSite;
  readonly arrival: AscentStart;
  readonly end: AscentStart;
}

/** Under other gradient factors than the settings' if told. Throws RangeError for a depth, time or rate that is no dive. */
export function bottomOf(phase: BottomPhase, gradientFactors = phase.settings.gradientFactors): Bottom {
  const { settings, depthM, minutes, descentMMin } = phase;
  if (!(depthM > 0) || !Number.isFinite(depthM))
    throw new RangeError(`a bottom phase needs a depth of more than 0 m, not ${depthM} m`);
  if (!(minutes >= 0) || !Number.isFinite(minutes))
    throw new RangeError(`a bottom phase needs a time of 0 min or more, not ${minutes} min`);
  if (!(descentMMin > 0)) throw new RangeError(`a descent needs a rate of more than 0 m/min, not ${descentMMin} m/min`);
  const site = curveSite(settings);
  const rest = { depthM: 0, gas: settings.gas, ...rested(settings), at: 0, anchorM: 0 };
  const arrival = startsAfter(site, gradientFactors)(rest, depthM / descentMMin, depthM);
  return { site, arrival, end: startsAfter(site, gradientFactors)(arrival, minutes) };
}

/** The same as a dive, as far as leaving the bottom or, with a rate, straight up from there. */
export function diveOfBottom({ settings, depthM, minutes, descentMMin }: BottomPhase, ascentMMin?: number): Dive {
  const steps: Step[] = [{ kind: 'descend', toM: depthM, durationS: (depthM / descentMMin) * 60 }];
  if (minutes > 0) steps.push({ kind: 'stay', durationS: minutes * 60 });
  if (ascentMMin !== undefined) steps.push({ kind: 'ascend', toM: 0, durationS: (depthM / ascentMMin) * 60 });
  return { settings, steps, lines: [] };
}

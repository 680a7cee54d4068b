import type { Dive } from './dive';

/** How far samples of a surface interval lie apart where only figures are asked for, s. */
export const INTERVAL_EVERY_S = 30;
const SECONDS_SAMPLED_SINGLY = 4 * 3600;

/** How finely a dive is sampled, s. */
export interface Sampling {
  readonly everyS: number;
  /** At the surface between dives, where nothing happens fast. */
  readonly intervalEveryS: number;
}

/** Each second while rules can still tell, more coarsely in dives of many hours, so that a week is no more work than a morning. */
export function samplingOf(dive: Dive, intervalEveryS: number): Sampling {
  const underWaterS = dive.steps.reduce(
    (sum, step) => sum + (step.kind === 'switch' || step.kind === 'interval' ? 0 : step.durationS),
    0,
  );
  const everyS = Math.max(1, Math.ceil(underWaterS / SECONDS_SAMPLED_SINGLY));
  return { everyS, intervalEveryS: Math.max(everyS, intervalEveryS) };
}

import { writeTime } from '../quantity/duration';
import type { UnitSystem } from '../quantity/unit-system';
import { numberAs, printAs } from '../sayings/measures';
import type { Target } from './trouble';

/** A span of minutes, to the second: `6 min`, `1 min 40 s`. */
export function sayMinutes(minutes: number): string {
  const seconds = Math.round(minutes * 60);
  return seconds > 0 ? writeTime(seconds) : '0 min';
}

/** Stops together, to the second and never fewer than are asked for: `6 min of stops`. */
export function sayStops(minutes: number): string {
  return `${sayMinutes(numberAs('plannedS', minutes * 60, 0) / 60)} of stops`;
}

/** What is avoided, as in "would have avoided the stop". */
export const AVOIDED: Readonly<Record<Target, string>> = {
  stop: 'the stop',
  ceiling: 'the ceiling',
  'slow-down': 'the “slow down”',
};

/** What would still have been there after the largest change, to follow "Even …". */
export function sayLeft(
  target: Target,
  left: { readonly stopsMin: number; readonly ceilingM: number },
  system: UnitSystem,
): string {
  if (target === 'slow-down') return 'the unit would have said “slow down”';
  if (target === 'stop' && Number.isFinite(left.stopsMin) && left.stopsMin > 0)
    return `${sayStops(left.stopsMin)} would have been asked for`;
  if (left.ceilingM >= 0.1) return `a ceiling at ${printAs('ceilingM', left.ceilingM, system)} would have been there`;
  return `${AVOIDED[target]} would have been there`;
}

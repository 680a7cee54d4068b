import { parsePositiveMeasure, type Measure } from './amount';
import { LENGTH_UNITS, METRES_PER_FOOT } from './length';
import { atMost, fixed } from './number';
import type { Parsed } from './parsed';
import { roundedTo, type Rounding } from './rounding';
import type { UnitSystem } from './unit-system';

const DEPTH: Measure = {
  name: 'depth',
  unitSize: (word) => LENGTH_UNITS.get(word),
  units: 'm or ft',
  offer: (value) => `${value} m or ${roundFeet(value / METRES_PER_FOOT)} ft`,
};

/** Reads a depth typed in metres or feet; m, never negative. */
export function parseDepth(text: string): Parsed<number> {
  return parsePositiveMeasure(text, DEPTH);
}

/** A depth as a reading, always as many decimals so that it keeps its width: `30.0 m`, `98 ft`. */
export function printDepth(depthM: number, system: UnitSystem, rounding: Rounding = 'nearest'): string {
  const [depth, decimals, unit] = system === 'metric' ? [depthM, 1, 'm'] : [depthM / METRES_PER_FOOT, 0, 'ft'];
  return `${fixed(roundedTo(depth, decimals, rounding), decimals)} ${unit}`;
}

/** A depth in a sentence, without a needless zero: `30 m`, `4.5 m`, `98 ft`. */
export function sayDepth(depthM: number, system: UnitSystem, rounding: Rounding = 'nearest'): string {
  return system === 'metric' ? `${atMost(roundedTo(depthM, 1, rounding), 1)} m` : printDepth(depthM, system, rounding);
}

const STOP_STEP_M = 3;
const STOP_STEP_FT = 10;

/**
 * The depth of a stop. The trade's stops come every 3 m or every 10 ft, so a multiple of 3 m is named by its number of
 * feet on that scale (6 m is the 20 ft stop); any other depth is converted, and never to a shallower one.
 */
export function printStopDepth(depthM: number, system: UnitSystem): string {
  if (system === 'metric') return sayDepth(depthM, system, 'up');
  const steps = depthM / STOP_STEP_M;
  const whole = Math.round(steps);
  return Math.abs(steps - whole) < 1e-6 ? `${whole * STOP_STEP_FT} ft` : printDepth(depthM, system, 'up');
}

/** The finest step a depth is shown in: 0.1 m or 1 ft; in m. */
export function depthStepM(system: UnitSystem): number {
  return system === 'metric' ? 0.1 : METRES_PER_FOOT;
}

function roundFeet(feet: number): number {
  return feet < 20 ? Math.round(feet) : Math.round(feet / 5) * 5;
}

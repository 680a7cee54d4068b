import { parsePositiveMeasure, type Measure } from './amount';
import { LENGTH_UNITS, METRES_PER_FOOT } from './length';
import { atMost } from './number';
import { refused, type Parsed } from './parsed';
import { secondsPerUnit } from './time';
import type { UnitSystem } from './unit-system';

const RATE: Measure = {
  name: 'rate',
  unitSize: metresPerMinute,
  units: 'm/min, ft/min, m/s or ft/s',
  offer: (value) => `${value} m/min or ${Math.round(value / METRES_PER_FOOT)} ft/min`,
};

/** Reads how fast the depth changes; m/min, more than nothing. */
export function parseRate(text: string): Parsed<number> {
  const read = parsePositiveMeasure(text, RATE);
  if (read.ok && read.value === 0)
    return refused('A rate of nothing never arrives.', 'Write a rate such as 9 m/min or 30 ft/min.');
  return read;
}

/** How many metres a minute one of a unit such as `ft/s` or `metres per minute` is. */
export function metresPerMinute(word: string): number | undefined {
  const [length = '', time = '', more] = word.split(/ *(?:\/|\bper\b) */);
  const lengthM = LENGTH_UNITS.get(length);
  const timeS = secondsPerUnit(time);
  return lengthM === undefined || timeS === undefined || more !== undefined ? undefined : (lengthM * 60) / timeS;
}

/** Where the trade thinks in threes of metres, feet go by tens: 9 m/min is 30 ft/min, 18 m/min is 60. */
const SCALE_M = 3;
const SCALE_FT = 10;

/** What a limit of some m/min is called in feet: by the trade's scale where it is on it, else to the whole foot. */
function limitInFeet(limitMMin: number): number {
  const steps = limitMMin / SCALE_M;
  const onScale = Math.abs(steps - Math.round(steps)) < 1e-6;
  return onScale ? Math.round(steps) * SCALE_FT : Math.round(limitMMin / METRES_PER_FOOT);
}

/** A limit of the rate in the reader’s units. It is one limit in both: see `fastestWithin`. */
export function printRateLimit(limitMMin: number, system: UnitSystem): string {
  return system === 'metric' ? printRate(limitMMin, system) : `${limitInFeet(limitMMin)} ft/min`;
}

/**
 * The fastest rate that keeps a limit, m/min: whoever rises at the figure it is stated by in either system keeps it. The
 * taught 9 m/min are taught as 30 ft/min too, which is 9.144 m/min (common practice, no single source).
 */
export function fastestWithin(limitMMin: number): number {
  return Math.max(limitMMin, Math.round(limitMMin * 10) / 10, limitInFeet(limitMMin) * METRES_PER_FOOT);
}

/** A rate in the reader’s units: at most one decimal of m/min, whole ft/min. */
export function printRate(rateMMin: number, system: UnitSystem): string {
  return system === 'metric' ? `${atMost(rateMMin, 1)} m/min` : `${atMost(rateMMin / METRES_PER_FOOT, 0)} ft/min`;
}

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

/** A rate in the reader’s units: at most one decimal of m/min, whole ft/min. */
export function printRate(rateMMin: number, system: UnitSystem): string {
  return system === 'metric' ? `${atMost(rateMMin, 1)} m/min` : `${atMost(rateMMin / METRES_PER_FOOT, 0)} ft/min`;
}

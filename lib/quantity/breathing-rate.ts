import { parsePositiveMeasure, type Measure } from './amount';
import { atMost } from './number';
import { refused, type Parsed } from './parsed';
import { secondsPerUnit } from './time';
import type { UnitSystem } from './unit-system';
import { LITRES_PER_CUBIC_FOOT, parseVolume } from './volume';

const BREATHING_RATE: Measure = {
  name: 'gas a minute',
  unitSize: litresPerMinute,
  units: 'L/min or cu ft/min',
  offer: (value) => `${value} L/min or ${atMost(value / LITRES_PER_CUBIC_FOOT, 2)} cu ft/min`,
};

/** Reads how fast someone breathes gas at the surface; L/min, more than nothing. */
export function parseBreathingRate(text: string): Parsed<number> {
  const read = parsePositiveMeasure(text, BREATHING_RATE);
  if (read.ok && read.value === 0)
    return refused('Nobody breathes nothing.', 'Write a rate such as 20 L/min or 0.7 cu ft/min.');
  return read;
}

/** How many litres a minute one of a unit such as `L/min` or `cubic feet per minute` is. */
function litresPerMinute(word: string): number | undefined {
  const [volume = '', time = '', more] = word.split(/ *(?:\/|\bper\b) */);
  const litres = volume === '' ? undefined : parseVolume(`1 ${volume}`);
  const timeS = secondsPerUnit(time);
  if (!litres?.ok || timeS === undefined || more !== undefined) return undefined;
  return (litres.value * 60) / timeS;
}

/** A breathing rate: `20 L/min`, `0.71 cu ft/min`. */
export function printBreathingRate(litresMin: number, system: UnitSystem): string {
  return system === 'metric'
    ? `${atMost(litresMin, 1)} L/min`
    : `${atMost(litresMin / LITRES_PER_CUBIC_FOOT, 2)} cu ft/min`;
}

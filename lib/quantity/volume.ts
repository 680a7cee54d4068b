import { parsePositiveMeasure, sizesByWord, type Measure } from './amount';
import { METRES_PER_FOOT } from './length';
import { atMost, fixed } from './number';
import type { Parsed } from './parsed';
import type { UnitSystem } from './unit-system';

/** One cubic foot, L (exact, from the foot): 28.316846592. */
export const LITRES_PER_CUBIC_FOOT = 1000 * METRES_PER_FOOT ** 3;

const VOLUME_UNITS = sizesByWord([
  [1, 'l, litre, litres, liter, liters'],
  [0.001, 'ml, millilitre, millilitres, milliliter, milliliters'],
  [LITRES_PER_CUBIC_FOOT, 'cuft, cu ft, cubic foot, cubic feet, ft3, ft³'],
]);

const VOLUME: Measure = {
  name: 'volume',
  unitSize: (word) => VOLUME_UNITS.get(word),
  units: 'L or cu ft',
  offer: (value) => `${value} L or ${atMost(value / LITRES_PER_CUBIC_FOOT, 1)} cu ft`,
};

/** Reads a volume; L, never negative. */
export function parseVolume(text: string): Parsed<number> {
  return parsePositiveMeasure(text, VOLUME);
}

/** A volume of gas: `2400 L`, `84.8 cu ft`. */
export function printVolume(volumeL: number, system: UnitSystem): string {
  return system === 'metric'
    ? `${fixed(volumeL, volumeL < 100 ? 1 : 0)} L`
    : `${fixed(volumeL / LITRES_PER_CUBIC_FOOT, 1)} cu ft`;
}

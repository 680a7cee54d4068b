import { parsePositiveMeasure, sizesByWord, type Measure } from './amount';
import { fixed } from './number';
import type { Parsed } from './parsed';
import type { UnitSystem } from './unit-system';

/** One pound-force per square inch, bar (NIST SP 811, appendix B: 6894.757 Pa; more digits from its definition). */
export const BAR_PER_PSI = 0.06894757293168361;
/** One standard atmosphere, bar (exact; 10th CGPM, 1954). */
const BAR_PER_ATMOSPHERE = 1.01325;
/** Standard atmosphere over millimetres of mercury, bar (exact to seven digits: 101325 Pa / 760). */
export const BAR_PER_MMHG = BAR_PER_ATMOSPHERE / 760;

const PRESSURE_UNITS = sizesByWord([
  [1, 'bar, bars'],
  [0.001, 'mbar, millibar, millibars, hpa, hectopascal, hectopascals'],
  [0.01, 'kpa, kilopascal, kilopascals'],
  [BAR_PER_ATMOSPHERE, 'atm, atmosphere, atmospheres'],
  [BAR_PER_PSI, 'psi'],
]);

const PRESSURE: Measure = {
  name: 'pressure',
  unitSize: (word) => PRESSURE_UNITS.get(word),
  units: 'bar, mbar, hPa, kPa, atm or psi',
  offer: (value) => `${value} bar or ${Math.round(value / BAR_PER_PSI)} psi`,
};

/** Reads an absolute or a cylinder pressure; bar, never negative. */
export function parsePressure(text: string): Parsed<number> {
  return parsePositiveMeasure(text, PRESSURE);
}

/** A pressure about a body or in the water: `4.01 bar`, `58.2 psi`. */
export function printPressure(pressureBar: number, system: UnitSystem): string {
  return system === 'metric' ? `${fixed(pressureBar, 2)} bar` : `${fixed(pressureBar / BAR_PER_PSI, 1)} psi`;
}

/** A pressure in a cylinder: `200 bar`, `2901 psi`. */
export function printCylinderPressure(pressureBar: number, system: UnitSystem): string {
  return system === 'metric' ? `${fixed(pressureBar, 0)} bar` : `${fixed(pressureBar / BAR_PER_PSI, 0)} psi`;
}

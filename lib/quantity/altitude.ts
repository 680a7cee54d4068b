import { parseMeasure, type Measure } from './amount';
import { LENGTH_UNITS, METRES_PER_FOOT } from './length';
import { fixed, plainText } from './number';
import { accepted, type Parsed } from './parsed';
import type { UnitSystem } from './unit-system';

const ALTITUDE: Measure = {
  name: 'altitude',
  unitSize: (word) => LENGTH_UNITS.get(word),
  units: 'm or ft',
  offer: (value) => `${value} m or ${Math.round(value / METRES_PER_FOOT / 100) * 100} ft`,
};

/** Reads an altitude typed in metres or feet, or `sea level`; m, below sea level negative. */
export function parseAltitude(text: string): Parsed<number> {
  if (/^\s*sea[\s-]*level\s*$/.test(plainText(text))) return accepted(0);
  return parseMeasure(text, ALTITUDE);
}

/** An altitude in the reader’s units, to the whole metre or foot. */
export function printAltitude(altitudeM: number, system: UnitSystem): string {
  return system === 'metric' ? `${fixed(altitudeM, 0)} m` : `${fixed(altitudeM / METRES_PER_FOOT, 0)} ft`;
}

import { printAltitude } from '../../quantity/altitude';
import { printDepth, printStopDepth, sayDepth } from '../../quantity/depth';
import { printClock, printHours, printMinutes, writeTime, MINUTE_S } from '../../quantity/duration';
import { atMost, fixed } from '../../quantity/number';
import { printPercent } from '../../quantity/percent';
import { printCylinderPressure, printPressure } from '../../quantity/pressure';
import { printRate } from '../../quantity/rate';
import { roundedTo, type Rounding } from '../../quantity/rounding';
import type { UnitSystem } from '../../quantity/unit-system';
import { printAs } from '../../sayings/measures';
import { printVolume } from '../../quantity/volume';
import type { Dimension } from './dimension';
import type { Amount } from './world';

interface Format {
  readonly of: readonly Dimension[];
  readonly meaning: string;
  /** Which way a part of a step goes, where the value itself doesn't say. */
  readonly rounds?: Rounding;
  print(value: number, system: UnitSystem, rounds: Rounding): string;
}

const time = (meaning: string, print: (minutes: number, rounds: Rounding) => string): Format => ({
  of: ['time'],
  meaning,
  print: (minutes, _, rounds) => print(minutes, rounds),
});
const wholeMinutes = (minutes: number, rounds: Rounding) =>
  rounds === 'down' ? printAs('noStopMin', minutes, 'metric') : printMinutes(minutes * MINUTE_S, rounds);
/** Seconds that have gone by, or, of what is needed, those still to come. */
const wholeSeconds = (minutes: number, rounds: Rounding) =>
  roundedTo(minutes * MINUTE_S, 0, rounds === 'up' ? 'up' : 'down');
const plain = (decimals: number): Format => ({
  of: ['plain', 'compartment'],
  meaning: decimals === 0 ? 'A whole number.' : `A number to ${decimals} decimal${decimals === 1 ? '' : 's'}.`,
  print: (value) => fixed(value, decimals),
});

/** Ways to print a value, by the name an author writes after |. */
export const FORMATS: Readonly<Record<string, Format>> = {
  m: { of: ['depth'], meaning: 'A depth without needless decimals: 30 m, 98 ft.', print: sayDepth },
  'm 1': { of: ['depth'], meaning: 'A depth to a decimal: 30.0 m, 98 ft.', print: printDepth },
  ceiling: {
    of: ['depth'],
    meaning: 'A ceiling, which is never told shallower than it is: 4.4 m, 15 ft.',
    rounds: 'up',
    print: printDepth,
  },
  stop: { of: ['depth'], meaning: 'The depth of a stop: 6 m, 20 ft.', print: printStopDepth },
  altitude: { of: ['depth'], meaning: 'An altitude: 2000 m, 6562 ft.', print: printAltitude },
  min: time('Minutes, to the nearest.', wholeMinutes),
  'min down': {
    ...time('Whole minutes that have been reached; more than 99 is said so.', wholeMinutes),
    rounds: 'down',
  },
  'min up': { ...time('Whole minutes that are needed.', wholeMinutes), rounds: 'up' },
  'min 1': time('Minutes to a decimal.', (minutes, rounds) => `${atMost(roundedTo(minutes, 1, rounds), 1)} min`),
  clock: time('Minutes and seconds: 12:30.', (minutes, rounds) => printClock(wholeSeconds(minutes, rounds))),
  hours: time('Hours and minutes: 2 h 15 min.', (minutes, rounds) => printHours(minutes * MINUTE_S, rounds)),
  seconds: time('A span to the second: 1 min 20 s.', (minutes, rounds) =>
    writeTime(roundedTo(minutes * MINUTE_S, 0, rounds)),
  ),
  bar: { of: ['pressure'], meaning: 'A pressure: 4.01 bar, 58.2 psi.', print: printPressure },
  cylinder: { of: ['pressure'], meaning: 'A pressure in a cylinder: 200 bar, 2901 psi.', print: printCylinderPressure },
  rate: { of: ['rate'], meaning: 'A rate: 9 m/min, 30 ft/min.', print: printRate },
  '%': { of: ['percent'], meaning: 'A percentage: 85%.', print: (value) => printPercent(value / 100) },
  '% 1': { of: ['percent'], meaning: 'A percentage to a decimal.', print: (value) => printPercent(value / 100, 1) },
  'g/L': { of: ['density'], meaning: 'A density: 5.2 g/L.', print: (value) => `${fixed(value, 1)} g/L` },
  L: { of: ['volume'], meaning: 'A volume of gas: 2400 L, 84.8 cu ft.', print: printVolume },
  number: plain(0),
  'number 1': plain(1),
  'number 2': plain(2),
  'number 3': plain(3),
  compartment: plain(0),
};

const USUAL: Readonly<Record<Dimension, string>> = {
  plain: 'number',
  depth: 'm',
  time: 'min',
  pressure: 'bar',
  rate: 'rate',
  percent: '%',
  density: 'g/L',
  volume: 'L',
  compartment: 'compartment',
};

/** The formats a kind of value may have, the usual one first. */
export function formatsFor(dimension: Dimension): string[] {
  return Object.keys(FORMATS)
    .filter((name) => FORMATS[name]!.of.includes(dimension))
    .sort((one, other) => Number(other === USUAL[dimension]) - Number(one === USUAL[dimension]));
}

/** A format by its name, or by its name and a direction after it: `clock up` rounds what is needed up. */
export function formatNamed(name: string): Format | undefined {
  if (Object.hasOwn(FORMATS, name)) return FORMATS[name];
  const [, form = '', rounds] = /^(.*) (up|down)$/.exec(name) ?? [];
  return Object.hasOwn(FORMATS, form) ? { ...FORMATS[form]!, rounds: rounds as Rounding } : undefined;
}

/** A value as a person reads it; in the usual form of its kind unless a format that fits it is named. */
export function printValue({ value, dimension }: Amount, system: UnitSystem, format?: string): string {
  const named = format === undefined ? undefined : formatNamed(format);
  const chosen = named?.of.includes(dimension) ? named : FORMATS[USUAL[dimension]]!;
  const { rounds = 'nearest' } = chosen;
  if (value === Infinity && !(dimension === 'time' && rounds === 'down'))
    return dimension === 'time' ? 'no end' : 'without limit';
  return chosen.print(value, system, rounds);
}

import { LENGTH_UNITS, METRES_PER_FOOT } from '../../quantity/length';
import { LITRES_PER_CUBIC_FOOT } from '../../quantity/volume';

/** In words, as in "this compares a time with a depth". */
export const DIMENSION_WORDS = {
  plain: 'a plain number',
  depth: 'a depth',
  time: 'a time',
  pressure: 'a pressure',
  rate: 'a rate',
  percent: 'a percentage',
  density: 'a density',
  volume: 'a volume of gas',
  compartment: 'the number of a compartment',
} as const;

/** What a value in an expression is a measure of; each has one unit inside expressions. */
export type Dimension = keyof typeof DIMENSION_WORDS;

/** The unit of each, as written after a number. */
export const DIMENSION_UNITS: Readonly<Record<Dimension, string>> = {
  plain: '',
  depth: 'm',
  time: 'min',
  pressure: 'bar',
  rate: 'm/min',
  percent: '%',
  density: 'g/L',
  volume: 'L',
  compartment: '',
};

interface UnitWord {
  readonly dimension: Dimension;
  readonly size: number;
}

const MINUTES: readonly (readonly [string, number])[] = [
  ['s', 1 / 60],
  ['second', 1 / 60],
  ['seconds', 1 / 60],
  ['min', 1],
  ['minute', 1],
  ['minutes', 1],
  ['h', 60],
  ['hour', 60],
  ['hours', 60],
];

/** The words that may follow a number, with what they make of it. Feet and metres may be put over a minute. */
export const UNIT_WORDS: ReadonlyMap<string, UnitWord> = new Map<string, UnitWord>([
  ...[...LENGTH_UNITS].map(([word, size]) => [word, { dimension: 'depth', size }] as const),
  ...MINUTES.map(([word, size]) => [word, { dimension: 'time', size }] as const),
  ['bar', { dimension: 'pressure', size: 1 }],
  ['m/min', { dimension: 'rate', size: 1 }],
  ['ft/min', { dimension: 'rate', size: METRES_PER_FOOT }],
  ['%', { dimension: 'percent', size: 1 }],
  ['g/l', { dimension: 'density', size: 1 }],
  ['l', { dimension: 'volume', size: 1 }],
  ['cuft', { dimension: 'volume', size: LITRES_PER_CUBIC_FOOT }],
]);

/** The dimension of a product; nothing where no unit is known for it. */
export function product(one: Dimension, other: Dimension): Dimension | undefined {
  if (isNumber(one)) return isNumber(other) ? 'plain' : other;
  if (isNumber(other)) return one;
  // A percentage of something is of that thing's kind: see `sharesIn`.
  if (one === 'percent') return other;
  if (other === 'percent') return one;
  if ((one === 'rate' && other === 'time') || (one === 'time' && other === 'rate')) return 'depth';
  return undefined;
}

/** How many percentages are multiplied in, each of which is taken as a fraction unless two meet. */
export function productScale(one: Dimension, other: Dimension): number {
  const percents = (one === 'percent' ? 1 : 0) + (other === 'percent' ? 1 : 0);
  return percents === 0 || isNumber(one) || isNumber(other) ? 1 : 1 / 100;
}

/** The dimension of a quotient; nothing where no unit is known for it. */
export function quotient(one: Dimension, other: Dimension): Dimension | undefined {
  if (isNumber(other)) return isNumber(one) ? 'plain' : one;
  if (one === other) return 'plain';
  if (one === 'depth' && other === 'time') return 'rate';
  if (one === 'depth' && other === 'rate') return 'time';
  return undefined;
}

/** Whether it is a bare number: a count of compartments is one. */
export function isNumber(dimension: Dimension): boolean {
  return dimension === 'plain' || dimension === 'compartment';
}

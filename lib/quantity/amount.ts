import { accepted, quoted, refused, refusedFor, type Parsed } from './parsed';
import { NUMBER_START, plainText, readNumber, tidy } from './number';
import { capital } from './capital';

/** A kind of quantity: the words for its units and how large each is in the unit used inside the model. */
export interface Measure {
  /** As in "is not a unit of depth". */
  readonly name: string;
  /** The size of a unit by its word, or nothing when the word is not a unit of this kind. */
  unitSize(word: string): number | undefined;
  /** The units to offer, as in "Write m or ft". */
  readonly units: string;
  /** What to write instead of a number without a unit, as in "30 m or 100 ft". */
  offer(value: number): string;
}

interface Amount {
  readonly value: number;
  readonly unit: string;
}

/** Reads a number and the word after it; the word may be empty. */
function readAmount(text: string): Parsed<Amount> {
  const plain = plainText(text).trim();
  if (plain === '') return refused('Nothing is written here.', 'Write a number and its unit.');
  const number = NUMBER_START.exec(plain)?.[0];
  if (number === undefined)
    return refused(`${quoted(text)} does not begin with a number.`, 'Write a number and its unit.');
  const unit = plain.slice(number.length).trim();
  if (/^\d/.test(unit)) {
    const joined = plain.replace(/(\d) +(?=\d)/g, '$1');
    return refusedFor(`${quoted(text)} has a space inside the number.`, `Write ${joined}.`, [joined]);
  }
  const read = readNumber(number, unit);
  return read.ok ? accepted({ value: read.value.value, unit }) : read;
}

/** Reads a quantity in any unit of its measure and gives it in the model's unit. */
export function parseMeasure(text: string, measure: Measure): Parsed<number> {
  const read = readAmount(text);
  if (!read.ok) return read;
  const { value, unit } = read.value;
  if (unit === '') {
    const offered = measure.offer(Math.abs(value));
    return refusedFor(`${text.trim()} what?`, `Write ${offered}.`, offered.split(' or '));
  }
  const size = measure.unitSize(unit);
  if (size === undefined)
    return refused(`${quoted(unit)} is not a unit of ${measure.name}.`, `Write ${measure.units}.`);
  return accepted(size === 1 ? value : tidy(value * size));
}

/** The same, where less than nothing makes no sense. */
export function parsePositiveMeasure(text: string, measure: Measure): Parsed<number> {
  const read = parseMeasure(text, measure);
  if (read.ok && read.value < 0) {
    const positive = text.trim().replace(/^[^\d.,]+/, '');
    return refusedFor(`${capital(measure.name)} is never negative.`, `Write ${positive}.`, [positive]);
  }
  return read;
}

/** A look-up of unit sizes from `[size, "word, word"]` rows. */
export function sizesByWord(sizes: readonly (readonly [number, string])[]): ReadonlyMap<string, number> {
  return new Map(sizes.flatMap(([size, words]) => words.split(', ').map((word) => [word, size] as const)));
}

import { accepted, quoted, refused, refusedFor, type Parsed } from './parsed';

/** A number as typed: its value, and its digits with a point for the decimal mark. */
export interface NumberRead {
  readonly value: number;
  readonly digits: string;
}

/** The characters a number may be typed with, at the start of a text. */
export const NUMBER_START = /^[-+]?(?:\d+(?:[.,]\d+)*|[.,]\d+)/;

/**
 * Text in the plain form the readers expect: small letters, ordinary spaces, ordinary minus signs.
 * The length never changes, so a position found in it is a position in the text typed.
 */
export function plainText(text: string): string {
  if (/^[\x00-\x7f]*$/.test(text)) return text.toLowerCase();
  return text
    .replace(/[\u00a0\u2000-\u200a\u202f\u205f\u3000\ufeff]/g, ' ')
    .replace(/[\u2212\u2010-\u2015\ufe63\uff0d]/g, '-')
    .replace(/[A-Z]/g, (letter) => letter.toLowerCase());
}

/**
 * Reads a number with a decimal point or a decimal comma. A comma before exactly three digits could mark thousands,
 * so `1,200` is refused; `39,6` and `0,125` are not in doubt. `unit` is put after the numbers the mend suggests.
 */
export function readNumber(text: string, unit = ''): Parsed<NumberRead> {
  const plain = plainText(text).trim();
  if (NUMBER_START.exec(plain)?.[0] !== plain)
    return refused(`${quoted(text)} is not a number.`, 'Write digits, such as 12 or 12.5.');
  const marks = plain.replace(/[^.,]/g, '');
  if (marks.length > 1) return refusedSeparators(plain, unit);
  if (marks === ',' && /^[-+]?[1-9]\d{0,2},\d{3}$/.test(plain)) {
    const decimal = plainNumber(Number(plain.replace(',', '.')));
    const readings = [plain.replace(',', ''), decimal].map((number) => withUnit(number, unit));
    return refusedFor(
      `${quoted(text)} could be ${plain.replace(',', '')} or ${decimal}.`,
      `Write ${readings.join(' or ')}.`,
      readings,
    );
  }
  const digits = plain.replace(',', '.');
  const value = Number(digits);
  if (!Number.isFinite(value)) return refused(`${quoted(text)} is too large a number.`, 'Write a smaller one.');
  return accepted({ value: value + 0, digits });
}

function refusedSeparators(plain: string, unit: string): Parsed<NumberRead> {
  const last = Math.max(plain.lastIndexOf(','), plain.lastIndexOf('.'));
  const tail = plain.slice(last + 1);
  const head = plain.slice(0, last).replace(/[.,]/g, '');
  // The same mark throughout can only part thousands; a different last one is the decimal mark.
  const sameMark = !plain.includes(',') || !plain.includes('.');
  const number = sameMark ? head + tail : `${head}.${tail}`;
  return refusedFor(
    `${quoted(plain)} has more than one mark in the number.`,
    `Write ${withUnit(number, unit)}, with no mark for thousands.`,
    [withUnit(number, unit)],
  );
}

function withUnit(number: string, unit: string): string {
  return unit === '' ? number : `${number} ${unit}`;
}

/** Rounds away the dust of a unit conversion, to a billionth: 100 ft is 30.48 m and nothing less tidy. */
export function tidy(value: number): number {
  const rounded = Math.round(value * 1e9) / 1e9 + 0;
  // Very small or very large values keep all they have.
  return Number.isFinite(rounded) && (rounded !== 0 || value === 0) ? rounded : value;
}

/** A number in plain decimal digits, never with an exponent, that reads back as exactly the same number. */
export function plainNumber(value: number): string {
  const text = String(value);
  const exponent = text.indexOf('e');
  return exponent < 0 ? text : shiftPoint(text.slice(0, exponent), Number(text.slice(exponent + 1)));
}

/** Moves the decimal point of a number written in plain digits to the right (or left): `0.29` by 2 is `29`. */
export function shiftPoint(decimal: string, places: number): string {
  const sign = decimal.startsWith('-') ? '-' : '';
  const [whole = '', part = ''] = decimal.replace('-', '').split('.');
  const at = whole.length + places;
  const digits = whole + part;
  const padded = at < 1 ? '0'.repeat(1 - at) + digits : digits.padEnd(at, '0');
  const point = Math.max(at, 1);
  const left = padded.slice(0, point).replace(/^0+(?=\d)/, '');
  const right = padded.slice(point).replace(/0+$/, '');
  return sign + left + (right === '' ? '' : `.${right}`);
}

/** A number to so many decimals, with a true minus sign and never `-0`; a dash when there is no number to show. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text.replace('-', '−');
}

/** A number to at most so many decimals, with no zeros at the end. */
export function atMost(value: number, decimals: number): string {
  const text = fixed(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A number of a working: six figures that count, and eight decimals at the most; one without end by its name. */
export function sixFigures(value: number): string {
  return Number.isFinite(value) ? atMost(Number(value.toPrecision(6)), 8) : String(value);
}

import { ALTITUDE_RANGE_M } from '../../../physics/atmosphere';
import { WATERS, type Water } from '../../../physics/water';
import { parseAltitude } from '../../../quantity/altitude';
import { plainNumber, plainText, readNumber } from '../../../quantity/number';
import { accepted, quoted, refused, refusedFor, type Parsed } from '../../../quantity/parsed';
import { fractionOfPercent } from '../../../quantity/percent';
import { isClockTime, parseTime } from '../../../quantity/time';
import { LONGEST_S } from '../../bounds';
import type { GradientFactors, Start } from '../../dive';
import { nearest } from '../nearest';

/** Readers of the values of settings, each of one value as typed. */

const WATER_WORDS: Readonly<Record<string, Water>> = {
  reference: 'reference',
  'reference water': 'reference',
  fresh: 'fresh',
  'fresh water': 'fresh',
  freshwater: 'fresh',
  salt: 'salt',
  'salt water': 'salt',
  saltwater: 'salt',
  sea: 'salt',
  'sea water': 'salt',
  seawater: 'salt',
};

/** A water by any of its names; refused with the nearest name. */
export function readWater(text: string): Parsed<Water> {
  return readChoice(text, WATER_WORDS, WATERS);
}

/** `ZH-L16C`, or its letter alone. */
export function readVariant(text: string): Parsed<'A' | 'B' | 'C'> {
  const variant = /^(?:(?:b(?:ü|ue|u)hlmann[ ,]*)?zh[ -]*l[ -]*16[ -]*)?([abc])$/.exec(plainText(text).trim())?.[1];
  if (variant === undefined)
    return refused(`${quoted(text)} is not a model this tool knows.`, 'Write ZH-L16A, ZH-L16B or ZH-L16C.');
  return accepted(variant.toUpperCase() as 'A' | 'B' | 'C');
}

/** One of a few words; `meanings` holds each accepted spelling and what it means, the main spellings being `choices`. */
export function readChoice<T>(
  text: string,
  meanings: Readonly<Record<string, T>>,
  choices: readonly string[],
): Parsed<T> {
  const word = plainText(text).trim().replace(/\s+/g, ' ');
  if (Object.hasOwn(meanings, word)) return accepted(meanings[word]!);
  const close = nearest(word, Object.keys(meanings));
  const offer = `${choices.slice(0, -1).join(', ')} or ${choices.at(-1)}`;
  const what = `${quoted(text)} is not ${offer}.`;
  return close
    ? refusedFor(what, `Did you mean ${quoted(close)}?`, [close])
    : refusedFor(what, `Write ${offer}.`, choices);
}

/** An altitude of a shore, m; refused outside what the standard atmosphere is used for here. */
export function readSiteAltitude(text: string): Parsed<number> {
  const read = parseAltitude(text);
  if (!read.ok) return read;
  const [lowest, highest] = ALTITUDE_RANGE_M;
  if (read.value < lowest) return refused(`${quoted(text)} is lower than any shore.`, `Write ${lowest} m or more.`);
  if (read.value > highest)
    return refused(`${quoted(text)} is higher than this model takes.`, `Write at most ${highest} m.`);
  return read;
}

/** `0 m, 2 h ago`: where the diver was saturated before, and how long ago they came. */
export function readArrival(text: string): Parsed<Start> {
  const plain = plainText(text);
  const place = /^(?:sea[\s-]*level|[-\d.,]+ *[a-z]+)/.exec(plain)?.[0];
  if (place === undefined || !/\sago$/.test(plain.slice(place.length))) {
    return refused(
      `${quoted(text)} does not say from where and when.`,
      'Write an altitude and a time, such as 0 m, 2 h ago.',
    );
  }
  const from = readSiteAltitude(place);
  if (!from.ok) return shifted(from, 0, place.length);
  const timeFrom = place.length + /^[\s,]*/.exec(plain.slice(place.length))![0].length;
  const timeText = text.slice(timeFrom, -'ago'.length).trimEnd();
  const time = readPlainTime(timeText);
  if (!time.ok) return shifted(time, timeFrom, timeText.length);
  return accepted({ kind: 'arrived', fromM: from.value, agoS: time.value });
}

/** A length of time where minutes and hours are both likely, so that `2:50` is in doubt. */
export function readPlainTime(text: string): Parsed<number> {
  if (isClockTime(text)) {
    const [first, second] = text.trim().split(':');
    return refused(
      `${quoted(text)} could be hours or minutes.`,
      `Write ${Number(first)} h ${Number(second)} min, or ${Number(first)} min ${Number(second)} s.`,
    );
  }
  const read = parseTime(text);
  return read.ok && read.value > LONGEST_S
    ? refused(`${quoted(text)} is longer than the week this model follows.`, 'Write at most 7 days.')
    : read;
}

/** `low/high` in percent, as fractions; refused below 1%, over 100%, and where the low one is the higher. */
export function readGradientFactors(text: string): Parsed<GradientFactors> {
  const plain = plainText(text).trim();
  const pair = /^([\d.,]+) *%? *\/ *([\d.,]+) *%?$/.exec(plain);
  if (!pair) {
    const one = /^([\d.,]+) *%?$/.exec(plain);
    const such = one ? `${one[1]}/${one[1]}` : '30/85';
    return refusedFor(
      `${quoted(text)} is not a pair of gradient factors.`,
      `Write low/high in percent, such as ${such}.`,
      [such],
    );
  }
  const low = fractionOfPercent(pair[1]!);
  if (!low.ok) return low;
  const high = fractionOfPercent(pair[2]!);
  if (!high.ok) return high;
  if (low.value > high.value)
    return refusedFor('The low gradient factor is higher than the high one.', `Write ${pair[2]}/${pair[1]}.`, [
      `${pair[2]}/${pair[1]}`,
    ]);
  if (low.value < 0.01)
    return refused(`${quoted(pair[1]!)} is less than 1%.`, 'Write gradient factors in percent, such as 30/85.');
  if (high.value > 1) return refused(`${quoted(pair[2]!)} is more than 100%.`, 'Write at most 100.');
  return accepted({ low: low.value, high: high.value });
}

/** A number without a unit, within a range. */
export function readPlainNumber(text: string, lowest: number, highest: number): Parsed<number> {
  const read = readNumber(text);
  if (!read.ok) return read;
  return within(read.value.value, text, lowest, highest, '');
}

/** A value that was read, or its refusal where it lies outside the range; `unit` is put after the numbers told. */
export function within(value: number, text: string, lowest: number, highest: number, unit: string): Parsed<number> {
  if (value < lowest) return refused(`${quoted(text)} is too little.`, `Write ${plainNumber(lowest)}${unit} or more.`);
  if (value > highest) return refused(`${quoted(text)} is too much.`, `Write at most ${plainNumber(highest)}${unit}.`);
  return accepted(value);
}

/** A refusal of part of a text, placed in the whole of it. */
export function shifted<T>(read: Parsed<T>, from: number, length: number): Parsed<T> {
  if (read.ok) return read;
  const [start, end] = read.at ?? [0, length];
  return { ...read, at: [from + start, from + end] };
}

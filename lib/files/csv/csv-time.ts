import { unitSize, type CsvUnit } from './csv-mapping';
import { DAY_S } from '../../quantity/duration';

const HALF_DAY_S = 43_200;

const CLOCK = /^\s*(\d+):(\d{1,2})(?::(\d{1,2}))?(?:[.,](\d+))?\s*$/;
const YEAR_FIRST = /^\s*(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T ]+/;
const YEAR_LAST = /^\s*(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})[T, ]+/;
const ZONE = /\s*(Z|[+-]\d{2}:?\d{2})\s*$/;
const HALF_OF_DAY = /\s*([ap])\.?\s?m\.?\s*$/i;

/** A written time, s: `2:50` as minutes and seconds (or hours and minutes, if `unit` says so), `1:02:50`; NaN if it is none. */
function clockSeconds(text: string, unit: CsvUnit): number {
  const clock = CLOCK.exec(text);
  if (!clock) return NaN;
  const [, first, second, third, decimals] = clock;
  const fraction = decimals === undefined ? 0 : Number(`0.${decimals}`);
  if (Number(second) > 59 || Number(third ?? 0) > 59) return NaN;
  if (third !== undefined) return Number(first) * 3600 + Number(second) * 60 + Number(third) + fraction;
  return unit === 'h:mm' ? Number(first) * 3600 + Number(second) * 60 : Number(first) * 60 + Number(second) + fraction;
}

/** A written date and time of day. */
export interface WrittenMoment {
  /** s since 1970 as if it were written in UTC. */
  readonly localS: number;
  /** How far its zone is ahead of UTC, s; undefined where none is written. */
  readonly zoneS: number | undefined;
}

/** Reads a date and a time of day; undefined if it is none. */
export function readMoment(text: string): WrittenMoment | undefined {
  const zone = ZONE.exec(text)?.[1];
  const localS = dateSeconds(text);
  if (!Number.isFinite(localS)) return undefined;
  return { localS, zoneS: zone === undefined ? undefined : zoneSeconds(zone) };
}

function zoneSeconds(zone: string): number {
  if (zone === 'Z') return 0;
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(zone)!;
  return (sign === '-' ? -60 : 60) * (Number(hours) * 60 + Number(minutes));
}

/** Seconds from one written moment to a later one; undefined where only one of them says its zone. */
export function secondsBetween(one: WrittenMoment, other: WrittenMoment): number | undefined {
  if ((one.zoneS === undefined) !== (other.zoneS === undefined)) return undefined;
  return other.localS - (other.zoneS ?? 0) - (one.localS - (one.zoneS ?? 0));
}

/** How a date is written where the order of its parts is not plain from it. */
export type DateOrder = 'day first' | 'month first';

/** A written date and time of day, s since 1970 as if in UTC: only differences are used. NaN if it is none. */
export function dateSeconds(text: string, order: DateOrder = 'day first'): number {
  const yearFirst = YEAR_FIRST.exec(text);
  const date = yearFirst ?? YEAR_LAST.exec(text);
  if (!date) return NaN;
  const [first, second] = [Number(date[1]), Number(date[2])];
  const monthFirst = yearFirst === null && order === 'month first' && date[0].includes('/');
  const [year, month, day] = yearFirst
    ? [first, second, Number(date[3])]
    : [fullYear(Number(date[3])), monthFirst ? first : second, monthFirst ? second : first];
  if (month < 1 || month > 12 || day < 1 || day > 31) return NaN;
  const clock = text.slice(date[0].length).replace(ZONE, '');
  return Date.UTC(year, month - 1, day) / 1000 + dayClockSeconds(clock);
}

/** `9:05` on a clock of twelve hours or of twenty-four, s since midnight. */
function dayClockSeconds(text: string): number {
  const half = HALF_OF_DAY.exec(text);
  const seconds = clockSeconds(half ? text.slice(0, half.index) : text, 'h:mm');
  if (!half) return seconds;
  if (seconds >= HALF_DAY_S + 3600) return NaN;
  return (seconds % HALF_DAY_S) + (/p/i.test(half[1]!) ? HALF_DAY_S : 0);
}

/** Years of two digits are of this century: nobody logged a dive on a computer before 1980. */
function fullYear(year: number): number {
  return year >= 100 ? year : year + (year >= 80 ? 1900 : 2000);
}

/**
 * Reads the cells of a time column in turn, s. A clock that passes midnight goes on counting: a time of day that is
 * more than half a day before the last one belongs to the next day.
 */
export function timeReader(unit: CsvUnit): (number: number, text: () => string) => number {
  const size = unitSize(unit);
  // To the millisecond: a day's number of ten digits holds no more.
  if (unit === 'days') return (number) => Math.round(number * DAY_S * 1e3) / 1e3;
  if (size !== undefined)
    return (number) =>
      unit === 'min' || unit === 'h' || unit === 'ms' ? Math.round(number * size * 1e6) / 1e6 : number;
  if (unit === 'date' || unit === 'date, month first') {
    const order = unit === 'date' ? 'day first' : 'month first';
    return (_number, text) => dateSeconds(text(), order);
  }
  let days = 0;
  let last = -Infinity;
  return (_number, text) => {
    const seconds = clockSeconds(text(), unit);
    if (unit === 'h:mm:ss' && seconds + HALF_DAY_S < last) days += 1;
    if (Number.isFinite(seconds)) last = seconds;
    return seconds + days * DAY_S;
  };
}

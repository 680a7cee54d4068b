import { unitSize, type CsvUnit } from './csv-mapping';

const HALF_DAY_S = 43_200;
const DAY_S = 86_400;

const CLOCK = /^\s*(\d+):(\d{1,2})(?::(\d{1,2}))?(?:[.,](\d+))?\s*$/;
const YEAR_FIRST = /^\s*(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T ]+/;
const DAY_FIRST = /^\s*(\d{1,2})\.(\d{1,2})\.(\d{4})[T ]+/;
const ZONE = /\s*(Z|[+-]\d{2}:?\d{2})\s*$/;

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

/** A written date and time of day, s since 1970 as if in UTC: only differences are used. NaN if it is none. */
export function dateSeconds(text: string): number {
  const yearFirst = YEAR_FIRST.exec(text);
  const date = yearFirst ?? DAY_FIRST.exec(text);
  if (!date) return NaN;
  const [year, month, day] = yearFirst ? [date[1], date[2], date[3]] : [date[3], date[2], date[1]];
  const clock = text.slice(date[0].length).replace(ZONE, '');
  return Date.UTC(Number(year), Number(month) - 1, Number(day)) / 1000 + clockSeconds(clock, 'h:mm');
}

/**
 * Reads the cells of a time column in turn, s. A clock that passes midnight goes on counting: a time of day that is
 * more than half a day before the last one belongs to the next day.
 */
export function timeReader(unit: CsvUnit): (number: number, text: () => string) => number {
  const size = unitSize(unit);
  if (size !== undefined)
    return (number) =>
      unit === 'min' || unit === 'h' || unit === 'ms' ? Math.round(number * size * 1e6) / 1e6 : number;
  if (unit === 'date') return (_number, text) => dateSeconds(text());
  let days = 0;
  let last = -Infinity;
  return (_number, text) => {
    const seconds = clockSeconds(text(), unit);
    if (unit === 'h:mm:ss' && seconds + HALF_DAY_S < last) days += 1;
    if (Number.isFinite(seconds)) last = seconds;
    return seconds + days * DAY_S;
  };
}

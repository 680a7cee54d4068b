import { DEPTH_UNITS, unitsOfRole, type CsvUnit, type Role } from './csv-mapping';
import { isClock, isDated } from './csv-shape';

/** The likeliest unit of a column, how sure it is (0–1), and what to ask where it is not sure enough. */
export interface UnitGuess {
  readonly unit: CsvUnit;
  readonly sure: number;
  readonly why: string;
  readonly possible: readonly CsvUnit[];
}

const CERTAIN = 1;
/** Sure enough not to be asked. */
const LIKELY = 0.8;
const OPEN = 0.5;

/**
 * Guesses the unit of a column from what its heading tells, if anything, and from its cells.
 * @param metric whether the headings are in a language whose divers measure in metres
 */
export function guessUnit(role: Role, told: CsvUnit | undefined, cells: readonly string[], metric: boolean): UnitGuess {
  const filled = cells.filter((cell) => cell !== '');
  switch (role) {
    case 'time':
    case 'noStop':
    case 'stopTime':
      return timeUnit(role, told, filled);
    case 'depth':
    case 'ceiling':
    case 'stopDepth':
      return depthUnit(told, largest(filled), metric);
    case 'oxygen':
    case 'helium':
      return shareUnit(told, largest(filled));
    case 'temperature':
      return temperatureUnit(told, largest(filled));
    default:
      return { unit: 'none', sure: CERTAIN, why: '', possible: unitsOfRole(role) };
  }
}

function settled(told: CsvUnit | undefined, likely: CsvUnit): UnitGuess {
  return { unit: told ?? likely, sure: told ? CERTAIN : LIKELY, why: '', possible: [told ?? likely] };
}

/** A percent of at most one is hardly breathed: a heading that says percent over such numbers is asked about. */
function shareUnit(told: CsvUnit | undefined, most: number): UnitGuess {
  const seems = most <= 1 && most > 0 ? 'fraction' : '%';
  if (told !== '%' || seems === '%') return settled(told, seems);
  const why = 'Its heading says percent, and its numbers look like fractions of 1.';
  return { unit: 'fraction', sure: OPEN, why, possible: ['fraction', '%'] };
}

/** No water a diver is in is warmer than 45 °C, and none colder than 28 °F: between them a bare number may be either. */
function temperatureUnit(told: CsvUnit | undefined, most: number): UnitGuess {
  if (told !== undefined || most > 200) return settled(told, 'K');
  if (most > 45 || most < 28) return settled(undefined, most > 45 ? '°F' : '°C');
  return { unit: '°C', sure: OPEN, why: 'Its heading names no unit.', possible: ['°C', '°F'] };
}

function timeUnit(role: Role, told: CsvUnit | undefined, cells: readonly string[]): UnitGuess {
  if (cells.some(isDated)) return dateUnit(cells);
  if (cells.some(isClock)) {
    if (cells.some((cell) => cell.split(':').length === 3)) return settled('h:mm:ss', 'h:mm:ss');
    if (told === 'm:ss' || told === 'h:mm') return settled(told, told);
    if (told === 'min') return settled('m:ss', 'm:ss');
    return {
      unit: 'm:ss',
      sure: OPEN,
      why: 'A time such as 2:50 could be minutes and seconds, or hours and minutes.',
      possible: ['m:ss', 'h:mm'],
    };
  }
  if (told !== undefined && !told.includes(':') && told !== 'date') return settled(told, told);
  const possible: readonly CsvUnit[] = ['s', 'min', 'h', 'ms', 'days'];
  const why = 'Its heading names no unit.';
  const most = largest(cells);
  if (role === 'time' && seemsDays(cells))
    return {
      unit: 'days',
      sure: OPEN,
      why: 'Its heading names no unit, and its numbers look like parts of a day.',
      possible,
    };
  // Seconds and milliseconds since 1970, as computers count.
  if (role === 'time' && most > 1e9) return settled(undefined, most > 1e11 ? 'ms' : 's');
  const whole = cells.every((cell) => /^[-+]?\d+$/.test(cell));
  if (role !== 'time') return { unit: most > 300 ? 's' : 'min', sure: OPEN, why, possible };
  return { unit: whole || most > 300 ? 's' : 'min', sure: OPEN, why, possible };
}

/** The order of day and month is plain from a first or second number over 12, or from a mark only one order is written with. */
function dateUnit(cells: readonly string[]): UnitGuess {
  const slashed = cells.flatMap((cell) => {
    const date = /^(\d{1,2})\/(\d{1,2})\/\d/.exec(cell);
    return date ? [[Number(date[1]), Number(date[2])] as const] : [];
  });
  if (slashed.length === 0 || slashed.some(([first]) => first > 12)) return settled('date', 'date');
  if (slashed.some(([, second]) => second > 12)) return settled('date, month first', 'date, month first');
  return {
    unit: cells.some((cell) => /[ap]\.?\s?m\.?$/i.test(cell)) ? 'date, month first' : 'date',
    sure: OPEN,
    why: `A date such as ${cells.find(isDated)!.split(/[ T,]/)[0]} could have the day or the month first.`,
    possible: ['date', 'date, month first'],
  };
}

/** The longest a dive in parts of a day: with more, the numbers are hours or minutes. */
const MOST_OF_A_DAY = 0.5;
/** Days since 1899 as spreadsheets count them: from 1980 to 2100. */
const DATE_SERIALS = [29_000, 73_500] as const;

function seemsDays(cells: readonly string[]): boolean {
  const numbers = cells.map((cell) => Number(cell.replace(',', '.')));
  const parts = numbers.filter((value) => !Number.isInteger(value));
  if (parts.length < 2 || numbers.some((value) => !(value >= 0))) return false;
  const steps = numbers.slice(1).map((value, i) => value - numbers[i]!);
  const serials = numbers.every((value) => value > DATE_SERIALS[0] && value < DATE_SERIALS[1]);
  const small = Math.max(...numbers) < MOST_OF_A_DAY && cells.some((cell) => /[.,]\d{5,}/.test(cell));
  return (serials || small) && steps.every((step) => step >= 0 && step < 0.01);
}

function depthUnit(told: CsvUnit | undefined, most: number, metric: boolean): UnitGuess {
  if (told !== undefined) return settled(told, told);
  if (metric) return settled(undefined, 'm');
  return { unit: most > 70 ? 'ft' : 'm', sure: OPEN, why: 'Its heading names no unit.', possible: DEPTH_UNITS };
}

function largest(cells: readonly string[]): number {
  return cells.reduce((most, cell) => Math.max(most, Number(cell.replace(',', '.')) || 0), 0);
}

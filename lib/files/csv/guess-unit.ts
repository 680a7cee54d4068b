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
      return settled(told, largest(filled) <= 1 && largest(filled) > 0 ? 'fraction' : '%');
    case 'temperature':
      return settled(told, largest(filled) > 200 ? 'K' : largest(filled) > 45 ? '°F' : '°C');
    default:
      return { unit: 'none', sure: CERTAIN, why: '', possible: unitsOfRole(role) };
  }
}

function settled(told: CsvUnit | undefined, likely: CsvUnit): UnitGuess {
  return { unit: told ?? likely, sure: told ? CERTAIN : LIKELY, why: '', possible: [told ?? likely] };
}

function timeUnit(role: Role, told: CsvUnit | undefined, cells: readonly string[]): UnitGuess {
  if (cells.some(isDated)) return settled('date', 'date');
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
  const possible: readonly CsvUnit[] = ['s', 'min', 'h', 'ms'];
  const why = 'Its heading names no unit.';
  const most = largest(cells);
  const whole = cells.every((cell) => /^[-+]?\d+$/.test(cell));
  if (role !== 'time') return { unit: most > 300 ? 's' : 'min', sure: OPEN, why, possible };
  return { unit: whole || most > 300 ? 's' : 'min', sure: OPEN, why, possible };
}

function depthUnit(told: CsvUnit | undefined, most: number, metric: boolean): UnitGuess {
  if (told !== undefined) return settled(told, told);
  if (metric) return settled(undefined, 'm');
  return { unit: most > 70 ? 'ft' : 'm', sure: OPEN, why: 'Its heading names no unit.', possible: DEPTH_UNITS };
}

function largest(cells: readonly string[]): number {
  return cells.reduce((most, cell) => Math.max(most, Number(cell.replace(',', '.')) || 0), 0);
}

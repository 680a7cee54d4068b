import type { Gas } from '../../physics/gas';
import { METRES_PER_FOOT } from '../../quantity/length';

/** What a column of a CSV file can mean. */
export const ROLES = [
  'time',
  'depth',
  'dive',
  'gas',
  'oxygen',
  'helium',
  'temperature',
  'noStop',
  'ceiling',
  'stopDepth',
  'stopTime',
  'ignored',
] as const;
export type Role = (typeof ROLES)[number];

/**
 * Units a column can be in. Written as clocks: `m:ss`, `h:mm` and `h:mm:ss` (a time of day or of the dive), `date` and
 * `date, month first` (a date with a time of day). `days` is how spreadsheets keep times: 1 is a day.
 */
export type CsvUnit =
  | 's'
  | 'min'
  | 'h'
  | 'ms'
  | 'm:ss'
  | 'h:mm'
  | 'h:mm:ss'
  | 'date'
  | 'date, month first'
  | 'days'
  | 'm'
  | 'ft'
  | 'cm'
  | '%'
  | 'fraction'
  | '°C'
  | '°F'
  | 'K'
  | 'none';

const TIME_UNITS = [
  's',
  'min',
  'h',
  'ms',
  'm:ss',
  'h:mm',
  'h:mm:ss',
  'date',
  'date, month first',
  'days',
] as const satisfies readonly CsvUnit[];
export const DEPTH_UNITS = ['m', 'ft', 'cm'] as const satisfies readonly CsvUnit[];

const UNITS_OF_ROLE: Readonly<Record<Role, readonly CsvUnit[]>> = {
  time: TIME_UNITS,
  depth: DEPTH_UNITS,
  dive: ['none'],
  gas: ['none'],
  oxygen: ['%', 'fraction'],
  helium: ['%', 'fraction'],
  temperature: ['°C', '°F', 'K'],
  noStop: TIME_UNITS,
  ceiling: DEPTH_UNITS,
  stopDepth: DEPTH_UNITS,
  stopTime: TIME_UNITS,
  ignored: ['none'],
};

/** The units a column of a role may be in; `none` where it has none. */
export function unitsOfRole(role: Role): readonly CsvUnit[] {
  return UNITS_OF_ROLE[role];
}

/** Words for a unit as a choice a person picks from. */
export const UNIT_WORDS: Readonly<Record<CsvUnit, string>> = {
  s: 'seconds',
  min: 'minutes',
  h: 'hours',
  ms: 'milliseconds',
  'm:ss': 'minutes and seconds (2:50)',
  'h:mm': 'hours and minutes (1:05)',
  'h:mm:ss': 'hours, minutes and seconds (1:02:50)',
  date: 'dates and times of day',
  'date, month first': 'dates and times of day, the month before the day',
  days: 'parts of a day, as spreadsheets keep times (0.5 is 12 h)',
  m: 'metres',
  ft: 'feet',
  cm: 'centimetres',
  '%': 'percent',
  fraction: 'fractions of 1',
  '°C': '°C',
  '°F': '°F',
  K: 'kelvin',
  none: 'no unit',
};

export interface ColumnUse {
  readonly role: Role;
  readonly unit: CsvUnit;
}

/** How to read a CSV file. */
export interface Mapping {
  /** One character; a space stands for any run of them. */
  readonly separator: string;
  readonly decimal: '.' | ',';
  /** Line of the file the first samples are on, counted from 1. */
  readonly firstRow: number;
  readonly columns: readonly ColumnUse[];
  /** The gases that lines above the samples name, for dives that no column tells the gas of. */
  readonly gasAbove?: { readonly rows: readonly number[]; readonly gases: readonly Gas[] } | undefined;
}

/** The size of a plain unit in the model's own (s, m or fraction); undefined for clocks, dates and temperatures. */
export function unitSize(unit: CsvUnit): number | undefined {
  switch (unit) {
    case 's':
    case 'm':
    case 'fraction':
    case 'none':
      return 1;
    case 'min':
      return 60;
    case 'h':
      return 3600;
    case 'days':
      return 86_400;
    case 'ms':
      return 0.001;
    case 'ft':
      return METRES_PER_FOOT;
    case 'cm':
    case '%':
      return 0.01;
    default:
      return undefined;
  }
}

/** A temperature in degrees Celsius; a unit that is none of temperature leaves it as it is. */
export function celsius(value: number, unit: CsvUnit): number {
  if (unit === 'K') return value - 273.15;
  return unit === '°F' ? ((value - 32) * 5) / 9 : value;
}

/** What a column can mean, in words a person picks from. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  time: 'time',
  depth: 'depth',
  dive: 'number of the dive',
  gas: 'gas',
  oxygen: 'oxygen',
  helium: 'helium',
  temperature: 'temperature',
  noStop: 'no-stop time the unit showed',
  ceiling: 'ceiling the unit showed',
  stopDepth: 'stop depth the unit showed',
  stopTime: 'stop time the unit showed',
  ignored: 'leave it out',
};

/** What is wrong with a mapping, if anything: without a time and a depth there is no dive. */
export function faultOfMapping(mapping: Mapping): { readonly what: string; readonly mend: string } | undefined {
  for (const role of ['time', 'depth'] as const) {
    const count = mapping.columns.filter((column) => column.role === role).length;
    if (count === 0)
      return { what: `No column is marked as the ${role}.`, mend: `Say which column holds the ${role}.` };
    if (count > 1)
      return { what: `More than one column is marked as the ${role}.`, mend: 'Keep one and leave the others out.' };
  }
  const odd = mapping.columns.find(({ role, unit }) => !UNITS_OF_ROLE[role].includes(unit));
  if (odd)
    return {
      what: `A column that holds the ${ROLE_WORDS[odd.role]} cannot be in ${UNIT_WORDS[odd.unit]}.`,
      mend: 'Choose another unit.',
    };
  if (mapping.separator.length !== 1)
    return { what: 'The mark between columns must be one character.', mend: 'Choose a different one.' };
  return undefined;
}

import { NO_STOP_CAP_MIN } from '../ascent/no-stop-cap';
import { printDepth, printStopDepth } from '../quantity/depth';
import { printClock, printHours, printMinutes, MINUTE_S, HOUR_S } from '../quantity/duration';
import { atMost, fixed } from '../quantity/number';
import { printCylinderPressure, printPressure } from '../quantity/pressure';
import { printRate } from '../quantity/rate';
import { roundedTo, type Rounding } from '../quantity/rounding';
import type { UnitSystem } from '../quantity/unit-system';

/** How one kind of figure is printed and how its steps are cut. */
export interface Measure {
  readonly name: string;
  /** Which way a part of a step goes. No surface says it again. */
  readonly rounds: Rounding;
  /** The figure with its unit, such as `12 min`; a percentage has no space, as everywhere else. */
  print(figure: number, system: UnitSystem, rounds: Rounding): string;
  /** Whether figure and unit stay together where others are parted: hours with minutes. */
  readonly whole?: boolean;
  /** What is said in place of a figure that is none: a ceiling at the surface, a wait that never ends. */
  instead?(figure: number): string | undefined;
}

const minutes: Measure['print'] = (min, _, rounds) => printMinutes(min * MINUTE_S, rounds);
/** Stops are whole minutes unless the plan has them finer; then to a tenth. */
const stopMinutes: Measure['print'] = (min, _, rounds) => `${atMost(roundedTo(min, 1, rounds), 1)} min`;
const seconds: Measure['print'] = (s, _, rounds) => printClock(roundedTo(s, 0, rounds));
const hours: Measure['print'] = (h, _, rounds) => printHours(h * HOUR_S, rounds);
const percent: Measure['print'] = (share, _, rounds) => `${fixed(roundedTo(share * 100, 0, rounds), 0)}%`;
const plain =
  (decimals: number, unit = ''): Measure['print'] =>
  (value, _, rounds) =>
    `${fixed(roundedTo(value, decimals, rounds), decimals)}${unit}`;

const noneAtSurface = (depthM: number) => (depthM > 0 ? undefined : 'none');
const never = (time: number) => (Number.isFinite(time) ? undefined : 'never');

/** A no-stop time as a person reads it: whole minutes that are there, and no figure beyond the cap. */
const noStop = {
  rounds: 'down',
  print: (min, system, rounds) => (min > NO_STOP_CAP_MIN ? `>${NO_STOP_CAP_MIN} min` : minutes(min, system, rounds)),
} as const satisfies Omit<Measure, 'name'>;

/** A no-stop limit of a table or a curve, which is told beyond the cap too; from three hours on in hours. */
const FROM_HOURS_MIN = 180;

/**
 * Everything a reading can be a figure of: its name, its unit in both systems, and the direction in which it is rounded.
 * This is the one place that decides them. Depths in m, times in the unit of the name, shares as fractions.
 */
export const MEASURES = {
  depth: { name: 'Depth', rounds: 'nearest', print: printDepth },
  greatestDepth: { name: 'Greatest depth', rounds: 'nearest', print: printDepth },
  runTimeS: { name: 'Time', rounds: 'down', print: seconds },
  diveTimeS: { name: 'Dive time', rounds: 'down', print: seconds },
  noStopMin: { name: 'No-stop time', ...noStop },
  creditedNoStopMin: { name: 'No-stop time with credit for the way up', ...noStop },
  noStopLimitMin: {
    name: 'No-stop limit',
    rounds: 'down',
    print: (min, system, rounds) =>
      min >= FROM_HOURS_MIN ? printHours(roundedTo(min, 0, rounds) * MINUTE_S) : minutes(min, system, rounds),
    instead: (min) => (min === Infinity ? 'no limit' : min <= 0 ? 'none left' : undefined),
  },
  /** To a tenth, where limits are compared. */
  noStopExactMin: {
    name: 'No-stop limit',
    rounds: 'down',
    print: plain(1, ' min'),
    instead: (min) => (min === Infinity ? 'no limit' : undefined),
  },
  ceilingM: { name: 'Ceiling', rounds: 'up', print: printDepth, instead: noneAtSurface },
  stopM: { name: 'Required stop', rounds: 'up', print: printStopDepth, instead: noneAtSurface },
  stopMin: { name: 'Minutes of the stop', rounds: 'up', print: stopMinutes, instead: never },
  /** A stop or a whole way up, where a plan is timed to the second. */
  plannedS: { name: 'Planned time', rounds: 'up', print: seconds },
  timeToSurfaceMin: { name: 'Time to surface', rounds: 'up', print: minutes, instead: never },
  supersaturation: { name: 'Supersaturation', rounds: 'nearest', print: percent },
  rateMMin: { name: 'Rate', rounds: 'nearest', print: (mMin, system) => printRate(Math.abs(mMin), system) },
  safetyStopS: { name: 'Safety stop', rounds: 'up', print: seconds },
  imposedStopS: { name: 'Imposed stop', rounds: 'up', print: seconds },
  noFlyH: { name: 'No flying for', rounds: 'up', print: hours, whole: true },
  desaturationH: { name: 'Desaturated in', rounds: 'up', print: hours, whole: true },
  lockedH: { name: 'Locked for', rounds: 'up', print: hours, whole: true },
  oxygenBar: { name: 'Oxygen pressure', rounds: 'nearest', print: plain(2, ' bar') },
  oxygenShare: { name: 'Oxygen', rounds: 'nearest', print: percent },
  lungUnits: { name: 'Lung units', rounds: 'nearest', print: plain(0) },
  densityGL: { name: 'Gas density', rounds: 'nearest', print: plain(1, ' g/L') },
  cylinderBar: { name: 'Cylinder', rounds: 'nearest', print: printCylinderPressure },
  tensionBar: { name: 'Gas in a compartment', rounds: 'nearest', print: printPressure },
} as const satisfies Readonly<Record<string, Measure>>;

export type MeasureId = keyof typeof MEASURES;

/** A figure of a measure as a person reads it, whole: `12 min`, `more than 99 min`, `6.9 m`, `none`, `85%`. */
export function printAs(id: MeasureId, figure: number, system: UnitSystem): string {
  const measure: Measure = MEASURES[id];
  return measure.instead?.(figure) ?? measure.print(figure, system, measure.rounds).replace('>', 'more than ');
}

/** The same parted for a tile or a column headed by its unit: `['12', 'min']`, `['>99', 'min']`, `['none', '']`. */
export function partsAs(id: MeasureId, figure: number, system: UnitSystem): readonly [value: string, unit: string] {
  const measure: Measure = MEASURES[id];
  const instead = measure.instead?.(figure);
  if (instead !== undefined) return [instead, ''];
  const text = measure.print(figure, system, measure.rounds);
  if (measure.whole) return [text, ''];
  if (text.endsWith('%')) return [text.slice(0, -1), '%'];
  const [, value, unit] = /^(\S+) (\D+)$/.exec(text) ?? [];
  return value === undefined || unit === undefined ? [text, ''] : [value, unit];
}

/** A figure for a file, to so many decimals, rounded the way its measure is. */
export function numberAs(id: MeasureId, figure: number, decimals: number): number {
  return roundedTo(figure, decimals, MEASURES[id].rounds);
}

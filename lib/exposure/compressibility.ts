import published from '../../content/published/compressibility.json';
import { nitrogenFraction, type Gas } from '../physics/gas';

/** The temperature cylinders are taken to have unless told, K: 20 °C. */
const CYLINDER_TEMPERATURE_K = 293.15;

type PureGas = 'O2' | 'N2' | 'He';

/** Pressures of the grid with 0 before them, where every gas is ideal. */
const PRESSURES_BAR: readonly number[] = [0, ...published.pressuresBar];

/** Z at the grid's pressures for a gas, between the grid's temperatures by straight lines; held at its ends. */
function rowAt(gas: string, temperatureK: number): readonly number[] {
  const rows = published.grid.filter((row) => row.gas === gas);
  const after = rows.findIndex((row) => row.temperatureK >= temperatureK);
  const high = rows[after < 0 ? rows.length - 1 : after]!;
  const low = after <= 0 ? high : rows[after - 1]!;
  const part = high === low ? 0 : (temperatureK - low.temperatureK) / (high.temperatureK - low.temperatureK);
  return [1, ...low.z.map((z, i) => z + (high.z[i]! - z) * part)];
}

/** Z at each of some pressures, with straight lines between them, and p/Z at each. */
interface Curve {
  readonly z: readonly number[];
  readonly ratiosBar: readonly number[];
}

/** Curves worked out before, by gas and temperature: a gauge is followed through thousands of samples. */
const curves = new WeakMap<Gas, Map<number, Curve>>();

/**
 * A mixture's Z is taken as the mean of its pure gases' by their fractions, each at the whole pressure (Amagat's law).
 * For air that lies within 0.0025 of the reference equation up to 300 bar. Straight lines between the published pressures
 * add at most 0.002.
 */
function curveOf(gas: Gas, temperatureK: number): Curve {
  const known = curves.get(gas) ?? new Map<number, Curve>();
  const before = known.get(temperatureK);
  if (before) return before;
  const fractions: readonly (readonly [PureGas, number])[] = [
    ['O2', gas.o2],
    ['N2', nitrogenFraction(gas)],
    ['He', gas.he],
  ];
  const rows = fractions.map(([pure, fraction]) => ({ row: rowAt(pure, temperatureK), fraction }));
  const z = PRESSURES_BAR.map((_, i) => rows.reduce((sum, { row, fraction }) => sum + fraction * row[i]!, 0));
  const curve = { z, ratiosBar: PRESSURES_BAR.map((bar, i) => bar / z[i]!) };
  curves.set(gas, known.set(temperatureK, curve));
  return curve;
}

/**
 * How far a cylinder's gas departs from the ideal at an absolute pressure in bar: Z = pV/nRT, without unit. Beyond the
 * grid's last pressure its last line is followed on.
 */
export function compressibility(gas: Gas, absoluteBar: number, temperatureK: number = CYLINDER_TEMPERATURE_K): number {
  const { z } = curveOf(gas, temperatureK);
  const at = segmentAt(PRESSURES_BAR, absoluteBar);
  return z[at]! + slopeAt(z, at) * (absoluteBar - PRESSURES_BAR[at]!);
}

/** The absolute pressure in bar at which p/Z has a value, bar: the inverse of `p / compressibility(gas, p)`. */
export function pressureAtRatio(gas: Gas, ratioBar: number): number {
  const { z, ratiosBar } = curveOf(gas, CYLINDER_TEMPERATURE_K);
  const at = segmentAt(ratiosBar, ratioBar);
  const slope = slopeAt(z, at);
  return (ratioBar * (z[at]! - slope * PRESSURES_BAR[at]!)) / (1 - slope * ratioBar);
}

function segmentAt(ascending: readonly number[], value: number): number {
  let at = 0;
  while (at < ascending.length - 2 && value >= ascending[at + 1]!) at += 1;
  return at;
}

function slopeAt(z: readonly number[], at: number): number {
  return (z[at + 1]! - z[at]!) / (PRESSURES_BAR[at + 1]! - PRESSURES_BAR[at]!);
}

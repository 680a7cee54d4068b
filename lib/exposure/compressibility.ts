import published from '../../content/published/compressibility.json';
import { nitrogenFraction, type Gas } from '../physics/gas';

/** The temperature cylinders are taken to have unless told, K: 20 °C. */
export const CYLINDER_TEMPERATURE_K = 293.15;

type PureGas = 'O2' | 'N2' | 'He';

/** Temperatures the published grid covers, K. */
export const TEMPERATURE_RANGE_K = [288.15, 300] as const;

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

/** Z at each of some pressures, and straight lines between them. */
export interface CompressibilityCurve {
  readonly pressuresBar: readonly number[];
  readonly z: readonly number[];
}

const curves = new Map<string, CompressibilityCurve>();

/**
 * How far a cylinder's gas departs from the ideal: Z = pV/nRT without unit, by absolute pressure in bar.
 *
 * A mixture's Z is taken as the mean of its pure gases' by their fractions, each at the whole pressure (Amagat's law).
 * For air that lies within 0.0025 of the reference equation up to 300 bar. Straight lines between the published pressures
 * add at most 0.002.
 */
export function compressibilityCurve(gas: Gas, temperatureK: number = CYLINDER_TEMPERATURE_K): CompressibilityCurve {
  const name = `${gas.o2}/${gas.he}/${temperatureK}`;
  const before = curves.get(name);
  if (before) return before;
  const fractions: readonly (readonly [PureGas, number])[] = [['O2', gas.o2], ['N2', nitrogenFraction(gas)], ['He', gas.he]];
  const rows = fractions.map(([pure, fraction]) => ({ row: rowAt(pure, temperatureK), fraction }));
  const z = PRESSURES_BAR.map((_, i) => rows.reduce((sum, { row, fraction }) => sum + fraction * row[i]!, 0));
  const curve = { pressuresBar: PRESSURES_BAR, z };
  curves.set(name, curve);
  return curve;
}

/** Z of a gas at an absolute pressure in bar; beyond the grid's last pressure its last line is followed on. */
export function compressibility(gas: Gas, absoluteBar: number, temperatureK: number = CYLINDER_TEMPERATURE_K): number {
  const { pressuresBar, z } = compressibilityCurve(gas, temperatureK);
  const at = segmentAt(pressuresBar, absoluteBar);
  return z[at]! + slopeOf(pressuresBar, z, at) * (absoluteBar - pressuresBar[at]!);
}

/** The absolute pressure in bar at which p/Z has a value, bar: the inverse of `p / compressibility(gas, p)`. */
export function pressureAtRatio(gas: Gas, ratioBar: number, temperatureK: number = CYLINDER_TEMPERATURE_K): number {
  const { pressuresBar, z } = compressibilityCurve(gas, temperatureK);
  const at = segmentAt(pressuresBar.map((bar, i) => bar / z[i]!), ratioBar);
  const slope = slopeOf(pressuresBar, z, at);
  return (ratioBar * (z[at]! - slope * pressuresBar[at]!)) / (1 - slope * ratioBar);
}

function segmentAt(ascending: readonly number[], value: number): number {
  let at = 0;
  while (at < ascending.length - 2 && value >= ascending[at + 1]!) at += 1;
  return at;
}

function slopeOf(x: readonly number[], y: readonly number[], at: number): number {
  return (y[at + 1]! - y[at]!) / (x[at + 1]! - x[at]!);
}

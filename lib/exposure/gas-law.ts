import type { Cylinder } from '../dive/supply';
import { SEA_LEVEL_BAR } from '../physics/atmosphere';
import { compressibility, pressureAtRatio } from './compressibility';

/** A cylinder as far as its gas is concerned. */
export type Vessel = Pick<Cylinder, 'waterL' | 'gas'>;

/**
 * How much gas a pressure in a cylinder stands for. Gas is counted in litres at 1 bar, at the cylinder's temperature, the
 * litres that "12 L at 200 bar is 2400 L" speaks of. Pressures are absolute, bar.
 */
export interface GasLaw {
  readonly name: 'ideal' | 'real';
  contentL(vessel: Vessel, absoluteBar: number): number;
  /** The pressure of so much gas; the inverse of `contentL`. */
  absoluteBar(vessel: Vessel, contentL: number): number;
}

/** Boyle's law, as taught: the content is volume times pressure. */
export const IDEAL_GAS: GasLaw = {
  name: 'ideal',
  contentL: ({ waterL }, absoluteBar) => waterL * absoluteBar,
  absoluteBar: ({ waterL }, contentL) => contentL / waterL,
};

/** The same divided by the gas's compressibility Z at 20 °C: at high pressure a cylinder of air holds less, of oxygen more. */
export const REAL_GAS: GasLaw = {
  name: 'real',
  contentL: ({ waterL, gas }, absoluteBar) => (waterL * absoluteBar) / compressibility(gas, absoluteBar),
  absoluteBar: ({ waterL, gas }, contentL) => pressureAtRatio(gas, contentL / waterL),
};

/** A gauge is closed at sea level and reads 0 there, whatever presses on it outside. */
export function absoluteOfGauge(gaugeBar: number): number {
  return gaugeBar + SEA_LEVEL_BAR;
}

/** What a gauge set to nothing at sea level shows of an absolute pressure, bar. */
export function gaugeOfAbsolute(absoluteBar: number): number {
  return absoluteBar - SEA_LEVEL_BAR;
}

import published from '../../content/published/gas-density.json';
import { nitrogenFraction, type Gas } from '../physics/gas';
import type { Timeline } from '../dive/timeline';

/** Molar masses, g/mol (IUPAC standard atomic weights, abridged: O 15.999, N 14.007, He 4.0026). */
export const MOLAR_MASS = { o2: 31.998, n2: 28.014, he: 4.0026 };
/** Molar gas constant, bar·L/(mol·K) (SI: 8.314462618 J/(mol·K)). */
export const GAS_CONSTANT = 0.08314462618;
export const ZERO_CELSIUS_K = 273.15;

/** Most that is recommended and most that is ever advised, g/L (Anthony and Mitchell 2016; figures from memory). */
export const RECOMMENDED_DENSITY_GL = published.advised.recommendedMaxGramsPerL;
export const HIGHEST_DENSITY_GL = published.advised.absoluteMaxGramsPerL;

/**
 * The temperature densities are told at unless another is given, °C. The advised maxima are quoted as air at 31 and 39 m,
 * which they are at 0 °C and not at the warmth of the lungs: only like is compared with like.
 */
export const DENSITY_TEMPERATURE_C = 0;

/**
 * Density of a dry gas at an ambient pressure in bar, g/L: p·M/(R·T), the ideal gas law with M the mean molar mass.
 * At diving pressures real gases differ from it by about 0.1%; argon, counted as nitrogen, by 0.4% in air.
 */
export function gasDensityGL(gas: Gas, ambientBar: number, temperatureC: number = DENSITY_TEMPERATURE_C): number {
  const molarMass = gas.o2 * MOLAR_MASS.o2 + nitrogenFraction(gas) * MOLAR_MASS.n2 + gas.he * MOLAR_MASS.he;
  return (ambientBar * molarMass) / (GAS_CONSTANT * (ZERO_CELSIUS_K + temperatureC));
}

export type DensityBand = 'within what is recommended' | 'over what is recommended' | 'over the most that is advised';

/** How a density, g/L, stands to the two published limits; a density right at a limit is still within it. */
export function densityBand(densityGL: number): DensityBand {
  if (densityGL <= RECOMMENDED_DENSITY_GL) return 'within what is recommended';
  return densityGL <= HIGHEST_DENSITY_GL ? 'over what is recommended' : 'over the most that is advised';
}

/** Density of the gas breathed at every sample of a timeline, g/L. */
export function gasDensitiesOf({ gases, legs, leg, ambientBar, length }: Timeline): Float64Array {
  const perBar = gases.map((gas) => gasDensityGL(gas, 1));
  const densities = new Float64Array(length);
  for (let i = 0; i < length; i += 1) densities[i] = ambientBar[i]! * perBar[legs[leg[i]!]!.gas]!;
  return densities;
}

/** Pressure at sea level in the standard atmosphere, bar (ISO 2533:1975). */
export const SEA_LEVEL_BAR = 1.01325;

/** Altitudes the model accepts, m: from the Dead Sea's shore to the highest lakes dived in. */
export const ALTITUDE_RANGE_M = [-450, 6000] as const;

/**
 * Pressure of the standard atmosphere at a geopotential altitude in metres, bar.
 * p = p0·(1 − h / 44330.8)^5.255876, the troposphere of the U.S. Standard Atmosphere 1976 and ISO 2533:1975.
 */
export function atmosphereBar(altitudeM: number): number {
  return SEA_LEVEL_BAR * Math.pow(1 - altitudeM / SCALE_M, EXPONENT);
}

/** The altitude, m, at which the standard atmosphere has a pressure, bar: how a day's own surface pressure is told. */
export function altitudeOfAtmosphere(pressureBar: number): number {
  return SCALE_M * (1 - Math.pow(pressureBar / SEA_LEVEL_BAR, 1 / EXPONENT));
}

const SCALE_M = 44330.8;
const EXPONENT = 5.255876;

/** Standard gravity, m/s² (CGPM 1901; ISO 80000-3). */
export const STANDARD_GRAVITY = 9.80665;

/** One foot of sea water, bar: 64 lb/ft³ under standard gravity (US Navy), in `content/published/water.json`. */
export const BAR_PER_FSW = 0.030643;

export const WATERS = ['reference', 'fresh', 'salt'] as const;
/** Which water the dive is in, or a unit believes it is in. */
export type Water = (typeof WATERS)[number];

const DENSITY_KG_M3 = { fresh: 1000, salt: 1030 };

/**
 * Pressure of one metre of water, bar.
 * `reference` is the depth gauge's convention of 0.1 bar a metre (10 m to the bar); fresh and salt are ρ·g with
 * 1000 and 1030 kg/m³.
 */
export function barPerMetre(water: Water): number {
  return water === 'reference' ? 0.1 : (DENSITY_KG_M3[water] * STANDARD_GRAVITY) / 1e5;
}

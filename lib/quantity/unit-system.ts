/** Which units a person reads: metres, bar and litres, or feet, psi and cubic feet. */
export const UNIT_SYSTEMS = ['metric', 'imperial'] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

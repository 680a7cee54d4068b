/** Water vapour in the lungs at 37 °C, 47 mmHg, bar. */
export const WATER_VAPOUR_BAR = 0.0627;

/** Carbon dioxide in the lungs, 40 mmHg, bar. It matters only where the respiratory quotient is not 1. */
export const ALVEOLAR_CO2_BAR = 0.0534;

/**
 * The part of ambient pressure that is not breathed gas, bar: p_H2O − (1 − RQ)/RQ · p_CO2.
 * At Bühlmann's RQ of 1 it is water vapour alone.
 */
export function lungOffsetBar(respiratoryQuotient: number): number {
  return WATER_VAPOUR_BAR - ((1 - respiratoryQuotient) / respiratoryQuotient) * ALVEOLAR_CO2_BAR;
}

/**
 * Pressure of one inert gas in the lungs, bar, of a fraction 0–1 at an ambient pressure in bar.
 * P = (p_amb − p_H2O + (1 − RQ)/RQ · p_CO2) · F (alveolar gas equation; Bühlmann takes RQ = 1).
 */
export function alveolarInertBar(ambientBar: number, fraction: number, respiratoryQuotient = 1): number {
  return (ambientBar - lungOffsetBar(respiratoryQuotient)) * fraction;
}

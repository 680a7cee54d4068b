import { AIR } from './gas';

/** Oxygen pressure commonly taught as the limit while working, bar. Common practice, no single source. */
export const WORKING_PO2_BAR = 1.4;
/** The same at rest, on the way up and at stops, bar. Common practice, no single source. */
export const RESTING_PO2_BAR = 1.6;
/**
 * The customary floor of oxygen pressure for a gas to be breathed, bar. Common practice, no single source. No line at
 * which a diver passes out: people differ, most are clear somewhat below it, and consciousness goes without warning.
 */
export const LEAST_PO2_BAR = 0.16;

/** The floor at a place, bar: where the air of the place itself has less, as much as that air. */
export function leastPO2BarAt(surfaceBar: number): number {
  return Math.min(LEAST_PO2_BAR, AIR.o2 * surfaceBar);
}

/**
 * How far over a limit still counts as at it, bar. Practice counts the surface as 1 bar and the limits to one decimal:
 * it calls oxygen at 6 m "1.6", which is 1.61 in the standard atmosphere.
 */
export const PO2_SLACK_BAR = 0.02;

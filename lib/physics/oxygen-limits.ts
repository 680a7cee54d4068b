/** Oxygen pressure commonly taught as the limit while working, bar. Common practice, no single source. */
export const WORKING_PO2_BAR = 1.4;
/** The same at rest, on the way up and at stops, bar. Common practice, no single source. */
export const RESTING_PO2_BAR = 1.6;
/** Oxygen pressure commonly taught as the least that keeps a diver awake, bar. Common practice, no single source. */
export const LEAST_PO2_BAR = 0.16;

/**
 * How far over a limit still counts as at it, bar. Practice counts the surface as 1 bar and the limits to one decimal:
 * it calls oxygen at 6 m "1.6", which is 1.61 in the standard atmosphere.
 */
export const PO2_SLACK_BAR = 0.02;

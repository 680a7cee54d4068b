/** Which way part of a step counts: a no-stop time goes down, a stop or a ceiling goes up. */
export type Rounding = 'down' | 'up' | 'nearest';

/**
 * So much of a step is the dust of a sum and never makes one more, or one less: far above what sums and conversions of
 * units leave, far below what anyone reads.
 */
export const DUST = 1e-6;

/** How many whole steps a value has room for. */
export function stepsIn(value: number, step = 1): number {
  return Math.floor(value / step + DUST);
}

/** How many whole steps it takes to reach a value. */
export function stepsTo(value: number, step = 1): number {
  return Math.ceil(value / step - DUST);
}

/** Rounds to so many decimals, in one direction. */
export function roundedTo(value: number, decimals: number, rounding: Rounding): number {
  const steps = value * 10 ** decimals;
  const whole =
    rounding === 'up' ? Math.ceil(steps - DUST) : Math.floor(steps + DUST + (rounding === 'down' ? 0 : 0.5));
  return whole / 10 ** decimals;
}

/** Which way part of a step counts: a no-stop time goes down, a stop or a ceiling goes up. */
export type Rounding = 'down' | 'up' | 'nearest';

/** So much of a step is the dust of a sum and never makes one more, or one less. */
const DUST = 1e-6;

/** Rounds to so many decimals, in one direction. */
export function roundedTo(value: number, decimals: number, rounding: Rounding): number {
  const steps = value * 10 ** decimals;
  const whole =
    rounding === 'down' ? Math.floor(steps + DUST) : rounding === 'up' ? Math.ceil(steps - DUST) : Math.round(steps);
  return whole / 10 ** decimals;
}

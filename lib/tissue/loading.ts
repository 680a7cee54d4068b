/**
 * The two closed-form answers to dP/dt = k·(P_alv(t) − P). Pressures in bar, k = ln 2 / half-time in 1/min, time in
 * minutes, rate in bar/min. Both are exact for any length of time.
 */

/** Haldane's solution at constant depth (Boycott, Damant & Haldane 1908). */
export function haldane(startBar: number, alveolarBar: number, k: number, minutes: number): number {
  return alveolarBar + (startBar - alveolarBar) * Math.exp(-k * minutes);
}

/**
 * Schreiner's solution while the breathed pressure changes at a steady rate (Schreiner & Kelley 1971).
 * P = P_alv0 + R·(t − 1/k) − (P_alv0 − P0 − R/k)·e^(−k·t), here with the two terms in R/k taken together: where the
 * change is quick they are large and all but cancel.
 */
export function schreiner(startBar: number, alveolarBar: number, rate: number, k: number, minutes: number): number {
  return (
    alveolarBar +
    rate * minutes +
    (startBar - alveolarBar) * Math.exp(-k * minutes) +
    (rate * Math.expm1(-k * minutes)) / k
  );
}

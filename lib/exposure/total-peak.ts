/** Both gases of one compartment, or both in the lungs, bar. */
export interface TwoGases {
  readonly nitrogenBar: number;
  readonly heliumBar: number;
}

/** How far two gases together rise above where they start, and after how long; Infinity when they only approach it. */
export interface TotalPeak {
  readonly riseBar: number;
  readonly afterMin: number;
}

/**
 * The highest that a compartment's two gases together will be while it breathes the same pressures for ever.
 *
 * Each follows Haldane's solution, P_alv + g·e^(−k·t) with its own gap g and speed k (1/min). The sum turns where its
 * slope is nothing, k_He·g_He·e^(−k_He·t) = −k_N2·g_N2·e^(−k_N2·t), which happens once at most; the highest is there, at
 * the start or in the end.
 */
export function totalPeak(
  start: TwoGases,
  breathed: TwoGases,
  k: { readonly nitrogen: number; readonly helium: number },
): TotalPeak {
  const nitrogenGap = start.nitrogenBar - breathed.nitrogenBar;
  const heliumGap = start.heliumBar - breathed.heliumBar;
  const riseAt = (minutes: number) =>
    nitrogenGap * Math.expm1(-k.nitrogen * minutes) + heliumGap * Math.expm1(-k.helium * minutes);
  const turnMin = Math.log((-k.helium * heliumGap) / (k.nitrogen * nitrogenGap)) / (k.helium - k.nitrogen);
  const candidates = [0, Infinity, ...(turnMin > 0 && Number.isFinite(turnMin) ? [turnMin] : [])];
  return candidates
    .map((afterMin) => ({ afterMin, riseBar: riseAt(afterMin) }))
    .reduce((best, one) => (one.riseBar > best.riseBar ? one : best));
}

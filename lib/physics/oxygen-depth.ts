/**
 * Maximum operating depth: where a gas's oxygen pressure reaches a limit, m.
 * d = (pO2 / fO2 − p_surface) / (bar per metre), from Dalton's law. Negative when even the surface is beyond the limit;
 * infinite for a gas without oxygen.
 * @param o2 fraction of oxygen, 0–1
 */
export function maximumOperatingDepthM(
  o2: number,
  pO2LimitBar: number,
  surfaceBar: number,
  barPerMetre: number,
): number {
  return o2 > 0 ? (pO2LimitBar / o2 - surfaceBar) / barPerMetre : Infinity;
}

/**
 * Minimum operating depth: the shallowest depth at which a gas has enough oxygen, m; 0 when it does at the surface,
 * infinite for a gas without oxygen. The same law as `maximumOperatingDepthM`.
 */
export function minimumOperatingDepthM(
  o2: number,
  pO2FloorBar: number,
  surfaceBar: number,
  barPerMetre: number,
): number {
  return Math.max(0, maximumOperatingDepthM(o2, pO2FloorBar, surfaceBar, barPerMetre));
}

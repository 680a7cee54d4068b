/**
 * What a compartment tolerates. Pressures are absolute, bar; a in bar, b without unit, gf 0–1.
 * Sources: Bühlmann, Tauchmedizin (M = a + p/b); Baker 1998 (gradient factors).
 */

/** Tolerated inert pressure at an ambient pressure: M = a + p/b. */
export function mValueBar(a: number, b: number, ambientBar: number): number {
  return a + ambientBar / b;
}

/** The same with a gradient factor: p + gf·(M − p). */
export function limitBar(a: number, b: number, gf: number, ambientBar: number): number {
  return ambientBar + gf * (mValueBar(a, b, ambientBar) - ambientBar);
}

/** Lowest ambient pressure that a tension tolerates: (P − a·gf)/(gf/b − gf + 1). It may be below any real pressure. */
export function toleratedAmbientBar(tensionBar: number, a: number, b: number, gf: number): number {
  return (tensionBar - a * gf) / (gf / b - gf + 1);
}

/** Coefficient of a compartment that holds both gases: each gas's own, averaged by its tension. */
export function mixedCoefficient(nitrogenBar: number, heliumBar: number, ofNitrogen: number, ofHelium: number): number {
  const inertBar = nitrogenBar + heliumBar;
  return inertBar > 0 ? (ofNitrogen * nitrogenBar + ofHelium * heliumBar) / inertBar : ofNitrogen;
}

/**
 * Which moment a dive that plays comes to between two looks at its clock, however close to it the first look was; −1 for
 * none. A dive that waits at a moment has passed it. Times in s.
 */
export function momentReached(moments: readonly { readonly atS: number }[], beforeS: number, nowS: number): number {
  return moments.findIndex(({ atS }) => atS > beforeS && atS <= nowS);
}

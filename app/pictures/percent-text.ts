/** A share as a whole percentage that is never parted from its sign: `85 %`. */
export function percentText(share: number): string {
  return `${Math.round(share * 100)}\u00a0%`;
}

/** A supersaturation in a few words: below 0 there is none. */
export function supersaturationText(value: number): string {
  return value <= 0 ? 'none' : percentText(value);
}

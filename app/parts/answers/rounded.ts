/** A number as it would be typed, to at most two decimals. */
export function rounded(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/**
 * A quantile of values in rising order, straight between neighbours (Hyndman and Fan 1996, type 7); `share` from 0 to 1, the
 * middle at 0.5. NaN of no values.
 */
export function quantile(sorted: readonly number[], share: number): number {
  const place = (sorted.length - 1) * share;
  const low = Math.floor(place);
  const [one, other] = [sorted[low]!, sorted[Math.min(low + 1, sorted.length - 1)]!];
  return one + (other - one) * (place - low);
}

import { atMost } from '@/lib/quantity/number';

/** A gradient factor as the trade writes it: percent without the sign. */
export function percentText(fraction: number): string {
  return atMost(fraction * 100, 1);
}

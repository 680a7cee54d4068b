import { ticks } from 'd3';
import type { SweepGrid } from '@/lib/curves/gradient-factor-sweep';
import { DUST } from '@/lib/quantity/rounding';

const ABOUT = 10;
/** Where the longest is many times the shortest, even steps would leave the short ones bare. */
const WIDE = 4;
const GROWING = [
  1, 1.5, 2, 3, 5, 7, 10, 15, 20, 30, 40, 50, 70, 100, 150, 200, 300, 500, 700, 1000, 1500, 2000, 3000, 5000, 10_000,
];

/** Round minutes at which contours are drawn: only those that some pair of factors passes. */
export function contourLevels({ values }: SweepGrid): number[] {
  const finite = values.filter(Number.isFinite);
  if (finite.length === 0) return [];
  const least = finite.reduce((a, b) => Math.min(a, b), Infinity);
  const most = finite.reduce((a, b) => Math.max(a, b), -Infinity);
  const levels = most > WIDE * least ? GROWING : ticks(least, most, ABOUT);
  return levels.filter((level) => level > least && level <= most);
}

/**
 * The grid as contours need it, without holes: beyond the pairs there are, a row goes on with its last pair; a time without
 * end is taken as longer than any that ends.
 */
export function contourSurface({ lows, highs, values }: SweepGrid): number[] {
  const most = values.reduce((longest, value) => (Number.isFinite(value) ? Math.max(longest, value) : longest), 0);
  const surface: number[] = [];
  for (let row = 0; row < highs.length; row += 1) {
    let last = 0;
    for (let column = 0; column < lows.length; column += 1) {
      const value = values[row * lows.length + column]!;
      if (!Number.isNaN(value)) last = value === Infinity ? 2 * most + 1 : value;
      surface.push(last);
    }
  }
  return surface;
}

/** The figure at a pair of factors that is on the grid, min; NaN where there is none. */
export function valueAt({ lows, highs, values }: SweepGrid, low: number, high: number): number {
  const place = (list: readonly number[], value: number) => list.findIndex((one) => Math.abs(one - value) < DUST);
  const [column, row] = [place(lows, low), place(highs, high)];
  return column < 0 || row < 0 ? NaN : values[row * lows.length + column]!;
}

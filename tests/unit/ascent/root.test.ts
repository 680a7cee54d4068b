import { describe, expect, it } from 'vitest';
import { changeBetween, rootBetween } from '@/lib/ascent/root';

/** A function that counts how often it is looked at. */
function counted(value: (at: number) => number) {
  const seen = { looks: 0, value: (at: number) => ((seen.looks += 1), value(at)) };
  return seen;
}

/** How often halving looks until a stretch is as short as it is looked into, and twice at the ends. */
const halvings = (from: number, to: number) =>
  2 + Math.ceil(Math.log2((to - from) / (2e-14 * Math.max(1, Math.abs(to)))));

const SMOOTH: readonly [what: string, value: (at: number) => number, from: number, to: number, root: number][] = [
  ['x² − 2', (x) => x * x - 2, 0, 2, Math.SQRT2],
  ['2 − x², which falls', (x) => 2 - x * x, 0, 2, Math.SQRT2],
  // The number that is its own cosine (OEIS A003957).
  ['x − cos x', (x) => x - Math.cos(x), 0, 1, 0.739085133215160641],
  ['ln(x/3), far from straight', (x) => Math.log(x / 3), 1, 40, 3],
  ['a straight line over a long way', (x) => x - 654_321.25, 0, 1e6, 654_321.25],
];

const HARD: readonly [what: string, value: (at: number) => number, from: number, to: number, root: number][] = [
  ['a step', (x) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
  ['a step by the end, from next to nothing', (x) => (x < 0.999 ? -1e-9 : 1), 0, 1, 0.999],
  ['a nineteenth power, flat at its root', (x) => (x - 0.3) ** 19, 0, 1, 0.3],
  ['a ninth power, flat far from its root', (x) => x ** 9 - 1e-9, 0, 1, 0.1],
  ['a curve as steep as a step', (x) => Math.atan(1e6 * (x - 0.7)), 0, 1, 0.7],
  ['x³ − 2', (x) => x ** 3 - 2, -1, 3, Math.cbrt(2)],
];

describe('a root', () => {
  it.each([...SMOOTH, ...HARD])(
    'of %s is found to the last digits, on the side of the end',
    (_, value, from, to, root) => {
      const found = rootBetween(value, from, to);
      expect(Math.abs(found - root)).toBeLessThanOrEqual(2.5e-14 * Math.max(1, Math.abs(to)));
      expect(value(found) > 0).toBe(value(to) > 0);
    },
  );

  it.each(SMOOTH)('of %s takes far fewer looks than halving', (_, value, from, to) => {
    const seen = counted(value);
    rootBetween(seen.value, from, to);
    expect(seen.looks).toBeLessThanOrEqual(halvings(from, to) / 2.5);
  });

  it.each(HARD)('of %s takes hardly more looks than halving', (_, value, from, to) => {
    const seen = counted(value);
    rootBetween(seen.value, from, to);
    expect(seen.looks).toBeLessThanOrEqual(halvings(from, to) + 2);
  });

  it('counts 0 as negative: where a function first rises from it is its root', () => {
    expect(rootBetween((x) => Math.max(0, x - 0.6), 0, 1)).toBeCloseTo(0.6, 12);
    expect(rootBetween((x) => Math.max(0, 0.6 - x), 0, 1)).toBeCloseTo(0.6, 12);
  });

  it('does not look again at the ends it is told of', () => {
    const seen = counted((x) => x - 0.25);
    const told = counted((x) => x - 0.25);
    rootBetween(seen.value, 0, 1);
    expect(rootBetween(told.value, 0, 1, -0.25, 0.75)).toBeCloseTo(0.25, 13);
    expect(told.looks).toBe(seen.looks - 2);
  });
});

describe('a change', () => {
  it.each([true, false])('to %s is found as closely as asked, on its later side', (becomes) => {
    const so = (at: number) => at >= 0.3 === becomes;
    const found = changeBetween(so, 0, 1, 1e-6);
    expect(so(found)).toBe(becomes);
    expect(found - 0.3).toBeGreaterThanOrEqual(0);
    expect(found - 0.3).toBeLessThanOrEqual(1e-6);
    expect(changeBetween(so, 0, 1, 0.5)).toBe(0.5);
  });
});

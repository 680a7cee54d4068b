import { expect, it } from 'vitest';
import { startsAfter } from '@/lib/ascent/plan/start-after';
import { ALL_NITROGEN, PLAIN_SITE, plainLoad } from './plain-model';

const after = startsAfter(PLAIN_SITE, { low: 1, high: 1 });
const untold = { ...plainLoad(1), depthM: 20, gas: ALL_NITROGEN, anchorM: 0 };
const start = { ...untold, stayedMin: 3 };

it('staying on, a start has stayed longer, and half the gap to what is breathed is gone in a half-time', () => {
  const then = after(start, 10);
  expect(then).toMatchObject({ depthM: 20, stayedMin: 13, anchorM: 0 });
  expect(then.nitrogenBar[0]).toBeCloseTo(2, 12);
  expect(after(untold, 10).stayedMin).toBe(10);
});

it('having gone to another depth, it has stayed there no time yet', () => {
  const then = after(start, 2, 10);
  expect(then).toMatchObject({ depthM: 10, stayedMin: 0 });
  // Schreiner’s solution from 1 bar, breathing 3 bar falling by 0.5 bar/min, k = ln 2/10.
  const k = Math.LN2 / 10;
  expect(then.nitrogenBar[0]).toBeCloseTo(3 - 0.5 * (2 - 1 / k) - (3 - 1 + 0.5 / k) * Math.exp(-k * 2), 12);
});

import { expect, it } from 'vitest';
import { SHARES, sharesOf } from '@/lib/ascent/plan/stretch';
import { PLAIN_SITE } from './plain-model';

const shares = sharesOf(PLAIN_SITE.compartments);
const ofTheFirst = (minutes: number) => [...shares(minutes).slice(0, SHARES)];

it('in a half-time leaves half of a gap, and of a rise what Schreiner’s solution does: (1 − ½)/ln 2', () => {
  // Nitrogen’s half-time is 10 min, helium’s 5: in 10 min helium has gone through two.
  const expected = [0.5, 0.5 / Math.LN2, 0.25, 0.75 / (2 * Math.LN2)];
  ofTheFirst(10).forEach((share, i) => expect(share).toBeCloseTo(expected[i]!, 12));
});

it('in no time leaves all of a gap, and of a rise', () => expect(ofTheFirst(0)).toEqual([1, 1, 1, 1]));

it('is not worked out again for the same time', () => {
  const once = shares(3);
  expect(shares(3)).toBe(once);
  expect(shares(4)).not.toBe(once);
});

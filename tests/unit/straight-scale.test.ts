import { scaleLinear } from 'd3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { straightScale } from '@/app/parts/straight-scale';
import { law } from '@/tests/laws/law';

const place = fc.integer({ min: -2000, max: 2000 }).map((tenths) => tenths / 10);
const rising = (length: number) =>
  fc.uniqueArray(place, { minLength: length, maxLength: length }).map((all) => all.sort((one, other) => one - other));

// Held to a general-purpose library: D3's linear scale.
describe('a straight scale', () => {
  it('places, and finds again, what D3’s does, between its points and beyond them', () => {
    law(
      fc.property(
        fc.integer({ min: 2, max: 5 }).chain((length) => fc.tuple(rising(length), rising(length))),
        place,
        ([values, places], at) => {
          const ours = straightScale(values, places);
          const theirs = scaleLinear(values, places);
          expect(ours(at)).toBeCloseTo(theirs(at), 6);
          expect(ours.invert(at)).toBeCloseTo(theirs.invert(at), 6);
        },
      ),
    );
  });

  it('runs upward on the screen where its two places fall', () => {
    law(
      fc.property(rising(2), rising(2), place, (values, places, at) => {
        const down = [...places].reverse();
        expect(straightScale(values, down)(at)).toBeCloseTo(scaleLinear(values, down)(at), 6);
        expect(straightScale(values, down).invert(at)).toBeCloseTo(scaleLinear(values, down).invert(at), 6);
      }),
    );
  });

  it('stands in the middle where it has no length', () => {
    expect(straightScale([3, 3], [0, 10])(3)).toBe(scaleLinear([3, 3], [0, 10])(3));
  });
});

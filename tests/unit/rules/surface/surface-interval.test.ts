import { expect, it } from 'vitest';
import { desaturationOf } from '@/lib/rules/surface/desaturation';
import { heliumAfter, nitrogenAfter } from '@/lib/rules/surface/surface-interval';

/** Nitrogen halves its gap in 10 min and helium in 5; at rest there are 0.75 bar of nitrogen. */
const resting = {
  compartment: 1,
  nitrogenBar: 0.75,
  heliumBar: 1,
  settledBar: 0.75,
  nitrogenK: Math.LN2 / 10,
  heliumK: Math.LN2 / 5,
};

it('at the surface helium is halved in each half-time, and so is what there is of nitrogen above rest', () => {
  expect(heliumAfter(resting, 15)).toBeCloseTo(1 / 8, 12);
  expect(nitrogenAfter({ ...resting, nitrogenBar: 1.75 }, 20)).toBeCloseTo(1, 12);
});

it('no more than a hundredth of a bar above rest counts as desaturated, of both gases together', () => {
  // 2^(−t/5) = 0.01.
  expect(desaturationOf([resting]).minutes).toBeCloseTo(5 * Math.log2(100), 5);
  // x² + x = 0.01 with x = 2^(−t/10), of a bar of each above rest.
  const x = (Math.sqrt(1.04) - 1) / 2;
  expect(desaturationOf([{ ...resting, nitrogenBar: 1.75 }]).minutes).toBeCloseTo(-10 * Math.log2(x), 5);
});

import { describe, expect, it } from 'vitest';
import { ceilingAtGf, ceilingOnLine, gradientFactorAt } from '@/lib/ascent/ceiling';
import { figuresOf } from '@/lib/ascent/figures';
import { computeTimeline } from '@/lib/dive/timeline';
import published from '@/content/published/gradient-factors.json';
import { compartments } from '@/lib/tissue/coefficients';
import { diveOf, stay } from '../rules/made-dives';
import { plainLoad } from './plain-model';

describe('the ceiling under one gradient factor', () => {
  it('of 4 bar where twice the ambient pressure is tolerated is at 2 bar: 10 m', () =>
    expect(ceilingAtGf(plainLoad(4), 1).depthM).toBeCloseTo(10, 12));
  it('under 50% is where one and a half times the ambient pressure is 4 bar: 16.7 m', () =>
    expect(ceilingAtGf(plainLoad(4), 0.5).depthM).toBeCloseTo(50 / 3, 12));
  it('is the surface, with no leader, while the surface is tolerated', () =>
    expect(ceilingAtGf(plainLoad(1.99), 1)).toEqual({ depthM: 0, leader: 0 }));

  it.each(published.values)(
    'of $tensionBar bar in compartment 5 under $gf is at the worked $toleratedAmbientBar bar',
    ({ tensionBar, gf, toleratedAmbientBar }) => {
      const nitrogenBar = new Float64Array(16);
      nitrogenBar[4] = tensionBar;
      const load = {
        compartments: compartments('C', '1b'),
        nitrogenBar,
        heliumBar: new Float64Array(16),
        at: 0,
        surfaceBar: 1,
        barPerMetre: 0.1,
      };
      const ceiling = ceilingAtGf(load, gf);
      expect(ceiling.leader).toBe(5);
      expect(1 + ceiling.depthM * 0.1).toBeCloseTo(toleratedAmbientBar, 5);
    },
  );

  it('with helium weighs each gas’s coefficients by its tension', () => {
    const load = plainLoad(1, 3);
    const heliumBesides = { ...load, compartments: { ...load.compartments, heliumB: new Float64Array(16).fill(0.3) } };
    // b = (1·0.5 + 3·0.3)/4 = 0.35, so 4 bar are tolerated at 4·0.35 = 1.4 bar.
    expect(ceilingAtGf(heliumBesides, 1).depthM).toBeCloseTo(4, 12);
  });
});

describe('the gradient factor on the line of 30/80 from 9 m', () => {
  it.each([
    [12, 0.3],
    [9, 0.3],
    [4.5, 0.55],
    [3, 0.8 - 0.5 / 3],
    [0, 0.8],
  ])('at %f m is %f', (depthM, gf) => expect(gradientFactorAt(depthM, 9, { low: 0.3, high: 0.8 })).toBeCloseTo(gf, 12));
  it('is high where there is no stop', () => expect(gradientFactorAt(5, 0, { low: 0.3, high: 0.8 })).toBe(0.8));
});

describe('a diver who comes up a mountain with the gas of the sea', () => {
  it('is bound from the first moment, with an anchor at the ceiling at low', () => {
    const dive = diveOf([stay(1200)], {
      altitudeM: 4000,
      start: { kind: 'arrived', fromM: 0, agoS: 0 },
      gradientFactors: { low: 0.1, high: 0.2 },
    });
    const { anchorM, ceilingAtLowM, ceilingM } = figuresOf(computeTimeline(dive, 60), dive.settings);
    expect(ceilingM[0]).toBeGreaterThan(0);
    expect(anchorM[0]).toBeGreaterThan(0);
    expect(anchorM[0]).toBeCloseTo(ceilingAtLowM[0]!, 12);
  });
});

describe('the ceiling on the line', () => {
  it('is where the tension meets the line: 2.6 bar under 50/100 from 12 m, at 5.2 m', () => {
    // At depth x bar below the surface: 1 + x + (1 − 0.5·x/1.2)·(1 + x) = 2.6, or 5x² − 19x + 7.2 = 0 in twelfths.
    const x = (19 - Math.sqrt(19 * 19 - 4 * 5 * 7.2)) / 10;
    expect(ceilingOnLine(plainLoad(2.6), { low: 0.5, high: 1 }, 12).depthM).toBeCloseTo(10 * x, 9);
  });

  it('is the surface while the surface is tolerated at high', () =>
    expect(ceilingOnLine(plainLoad(2), { low: 0.5, high: 1 }, 9)).toEqual({ depthM: 0, leader: 0 }));
  it('under equal gradient factors is the plain ceiling', () =>
    expect(ceilingOnLine(plainLoad(4), { low: 1, high: 1 }, 12)).toEqual(ceilingAtGf(plainLoad(4), 1)));
});

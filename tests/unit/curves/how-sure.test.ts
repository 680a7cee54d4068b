import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { curveSite, depthLadder, rested } from '@/lib/curves/curve-site';
import { ceilingBand, noStopBand } from '@/lib/curves/how-sure';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { USUAL_VARIATION, variantsOf, variedCompartments, type Variation } from '@/lib/curves/variation';
import { computeTimeline } from '@/lib/dive/timeline';
import { compartments } from '@/lib/tissue/coefficients';
import { mValueBar } from '@/lib/tissue/limit';
import { diveOf, down, settingsWith, stay } from './scripted';
import { law } from '@/tests/laws/law';

const settings = settingsWith();
const conditions = { site: curveSite(settings), tissues: rested(settings), gas: settings.gas, gf: 0.85 };
const depths = depthLadder(12, 48, 3);
const CERTAIN: Variation = { halfTimes: 0, limits: 0, depthM: 0, start: 0, samples: 5, seed: 1 };
const dive = diveOf(
  { gradientFactors: { low: 0.4, high: 0.85 } },
  down(36, 18),
  stay(25),
  { kind: 'ascend', toM: 9, durationS: 180 },
  stay(10),
);

describe('a band around the no-stop curve', () => {
  const band = noStopBand(conditions, depths, USUAL_VARIATION);

  it('has the model’s own curve in the middle', () => {
    expect([...band.middle]).toEqual([...noStopCurve(conditions, depths).minutes]);
    expect([...band.at]).toEqual([...depths]);
  });

  it('lies around it', () => {
    depths.forEach((_, i) => {
      expect(band.low[i]!).toBeLessThan(band.middle[i]!);
      expect(band.high[i]!).toBeGreaterThan(band.middle[i]!);
    });
  });

  it('is the curve itself where nothing is varied', () => {
    const { low, middle, high } = noStopBand(conditions, depths, CERTAIN);
    expect([...low]).toEqual([...middle]);
    expect([...high]).toEqual([...middle]);
  });

  it('holds any way it might be that is no further off', () => {
    const share = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    const each = fc.array(share, { minLength: 16, maxLength: 16 });
    law(
      fc.property(
        each,
        each,
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        (halfTimes, limits, addedDepthM, start) => {
          const variant = {
            halfTimes: Float64Array.from(halfTimes, (s) => 1 + s),
            limits: Float64Array.from(limits, (s) => 1 + s),
            addedDepthM,
            start: 1 + start,
          };
          const site = { ...conditions.site, compartments: variedCompartments(conditions.site.compartments, variant) };
          const tissues = {
            ...conditions.tissues,
            nitrogenBar: conditions.tissues.nitrogenBar.map((bar) => bar * (1 + start)),
          };
          const { minutes } = noStopCurve(
            { ...conditions, site, tissues },
            depths.map((depthM) => depthM + addedDepthM),
          );
          minutes.forEach((m, i) => {
            if (!(m >= band.low[i]! - 1e-9 && m <= band.high[i]! + 1e-9))
              expect.fail(`${m} min at ${depths[i]} m is outside ${band.low[i]} to ${band.high[i]}`);
          });
        },
      ),
      200,
    );
  });

  it('is the same every time', () => expect(noStopBand(conditions, depths, USUAL_VARIATION)).toEqual(band));

  it('is told in whole minutes only by someone who has not seen it: at 30 m it is minutes wide', () => {
    const at30 = depths.indexOf(30);
    expect(band.high[at30]! - band.low[at30]!).toBeGreaterThan(4);
  });
});

describe('a band around the ceiling', () => {
  const band = ceilingBand(dive, 20, { ...USUAL_VARIATION, samples: 12 });

  it('has the engine’s own ceiling in the middle', () => {
    const timeline = computeTimeline(dive, 20);
    expect([...band.at]).toEqual([...timeline.timeS]);
    const { ceilingM } = figuresOf(timeline, dive.settings);
    band.middle.forEach((depthM, i) => expect(depthM).toBeCloseTo(ceilingM[i]!, 9));
  });

  it('lies around it, and is metres wide at the end of the bottom phase', () => {
    band.middle.forEach((depthM, i) => {
      expect(band.low[i]!).toBeLessThanOrEqual(depthM);
      expect(band.high[i]!).toBeGreaterThanOrEqual(depthM);
    });
    const left = band.at.findIndex((timeS) => timeS >= 27 * 60);
    expect(band.high[left]! - band.low[left]!).toBeGreaterThan(2);
  });

  it('is the ceiling itself where nothing is varied', () => {
    const { low, middle, high } = ceilingBand(dive, 60, CERTAIN);
    middle.forEach((depthM, i) => {
      expect(low[i]).toBeCloseTo(depthM, 9);
      expect(high[i]).toBeCloseTo(depthM, 9);
    });
  });
});

describe('the ways tried', () => {
  it('are the way things are said to be, sixteen corners and the samples', () => {
    const variants = variantsOf(USUAL_VARIATION);
    expect(variants).toHaveLength(1 + 16 + USUAL_VARIATION.samples);
    expect([...variants[0]!.halfTimes]).toEqual(new Array(16).fill(1));
    expect(
      new Set(
        variants
          .slice(1, 17)
          .map(({ halfTimes, limits, addedDepthM, start }) => [halfTimes[0], limits[0], addedDepthM, start].join()),
      ).size,
    ).toBe(16);
  });

  it('are never further off than said', () => {
    for (const { halfTimes, limits, addedDepthM, start } of variantsOf(USUAL_VARIATION)) {
      for (const factor of [...halfTimes, ...limits]) expect(Math.abs(factor - 1)).toBeLessThanOrEqual(0.1 + 1e-12);
      expect(Math.abs(addedDepthM)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(start - 1)).toBeLessThanOrEqual(0.05 + 1e-12);
    }
  });

  it.each([{ halfTimes: 1 }, { limits: -0.1 }, { start: NaN }, { depthM: -1 }, { samples: -1 }])(
    'are refused for %o',
    (wrong) => {
      expect(() => variantsOf({ ...USUAL_VARIATION, ...wrong })).toThrow(RangeError);
    },
  );

  it('widen the overpressure a compartment allows by the factor, at any pressure', () => {
    const all = compartments('C', '1b');
    const variant = {
      halfTimes: new Float64Array(16).fill(1.1),
      limits: new Float64Array(16).fill(0.9),
      addedDepthM: 0,
      start: 1,
    };
    const varied = variedCompartments(all, variant);
    for (const ambientBar of [0.7, 1, 3]) {
      const allowed = mValueBar(all.nitrogenA[6]!, all.nitrogenB[6]!, ambientBar) - ambientBar;
      expect(mValueBar(varied.nitrogenA[6]!, varied.nitrogenB[6]!, ambientBar) - ambientBar).toBeCloseTo(
        0.9 * allowed,
        12,
      );
    }
    expect(varied.nitrogenHalfTimeMin[0]).toBeCloseTo(5.5, 12);
    expect(varied.nitrogenK[0]! * varied.nitrogenHalfTimeMin[0]!).toBeCloseTo(Math.LN2, 12);
  });
});

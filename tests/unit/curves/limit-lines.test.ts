import { describe, expect, it } from 'vitest';
import published from '@/content/published/m-values.json';
import { gradientFactorAt } from '@/lib/ascent/ceiling';
import { limitLines } from '@/lib/curves/limit-lines';
import { compartments } from '@/lib/tissue/coefficients';
import { limitBar } from '@/lib/tissue/limit';

const site = { compartments: compartments('C', '1b'), surfaceBar: 1, barPerMetre: 0.1 };
const request = { site, gradientFactors: { low: 0.3, high: 0.8 }, heliumShare: 0, anchorM: 12, deepestM: 40 };

describe('the limits as lines', () => {
  it.each(['nitrogen', 'helium'] as const)('have the published surfacing limits and slopes of %s', (gas) => {
    const rows = published.values.filter((row) => row.gas === gas && row.compartment !== '1');
    limitLines({ ...request, heliumShare: gas === 'helium' ? 1 : 0 }).forEach(({ surfacingBar, slope }, c) => {
      const row = rows[c]!;
      const surfacingMsw = typeof row.surfacingMsw === 'number' ? row.surfacingMsw : row.surfacingMsw.C;
      expect(Math.abs(surfacingBar.model * 10 - surfacingMsw)).toBeLessThanOrEqual(
        published.tolerances.surfacing.value + 1e-9,
      );
      expect(Math.abs(slope - row.slope)).toBeLessThanOrEqual(published.tolerances.slope.value + 1e-9);
    });
  });

  it('run from no pressure to the deepest depth, under the model, low and high', () => {
    const [first] = limitLines(request);
    const { nitrogenA, nitrogenB } = site.compartments;
    expect(first!.mLine[0]).toEqual({ ambientBar: 0, tensionBar: nitrogenA[0] });
    expect(first!.mLine[1].ambientBar).toBeCloseTo(5, 12);
    expect(first!.mLine[1].tensionBar).toBeCloseTo(nitrogenA[0]! + 5 / nitrogenB[0]!, 12);
    expect(first!.lowLine[1].tensionBar).toBeCloseTo(limitBar(nitrogenA[0]!, nitrogenB[0]!, 0.3, 5), 12);
    expect(first!.highLine[0].tensionBar).toBeCloseTo(0.8 * nitrogenA[0]!, 12);
  });

  it('from low to high begin at the surface on the high line and end at the first stop on the low one', () => {
    for (const { fromLowToHigh, a, b, surfacingBar } of limitLines(request)) {
      expect(fromLowToHigh[0]!.tensionBar).toBeCloseTo(surfacingBar.high, 12);
      expect(fromLowToHigh.at(-1)!.ambientBar).toBeCloseTo(2.2, 12);
      expect(fromLowToHigh.at(-1)!.tensionBar).toBeCloseTo(limitBar(a, b, 0.3, 2.2), 12);
      const middle = fromLowToHigh[12]!;
      expect(middle.tensionBar).toBeCloseTo(limitBar(a, b, gradientFactorAt(6, 12, request.gradientFactors), 1.6), 12);
    }
  });

  it('have no line from low to high without a first stop', () =>
    expect(limitLines({ ...request, anchorM: 0 })[0]!.fromLowToHigh).toEqual([]));

  it('of a mixture lie between those of its gases', () => {
    const [nitrogen, half, helium] = [0, 0.5, 1].map((heliumShare) => limitLines({ ...request, heliumShare })[4]!);
    expect(half!.a).toBeCloseTo((nitrogen!.a + helium!.a) / 2, 12);
    expect(half!.b).toBeCloseTo((nitrogen!.b + helium!.b) / 2, 12);
    expect(() => limitLines({ ...request, heliumShare: 1.2 })).toThrow(RangeError);
  });
});

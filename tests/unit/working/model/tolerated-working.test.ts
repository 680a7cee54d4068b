import * as fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { curveSite } from '@/lib/curves/curve-site';
import { limitLines } from '@/lib/curves/limit-lines';
import { defaultSettings } from '@/lib/dive/default-settings';
import { computeTimeline } from '@/lib/dive/timeline';
import { loadCalculator, type Calculator } from '@/lib/working/calculator';
import { toleratedWorking } from '@/lib/working/model/tolerated-working';
import { law } from '@/tests/laws/law';

let calculator: Calculator;
beforeAll(async () => {
  calculator = await loadCalculator();
});

function at(depthM: number, gradientFactors: { low: number; high: number }) {
  const settings = { ...defaultSettings(), gradientFactors };
  const timeline = computeTimeline(
    { settings, steps: [{ kind: 'descend', toM: depthM, durationS: 0 }], lines: [] },
    1e9,
  );
  return { timeline, figures: figuresOf(timeline, settings), sample: timeline.length - 1 };
}

const asked = fc.record({
  compartment: fc.integer({ min: 1, max: 16 }),
  heliumShare: fc.constantFrom(0, 0.5, 1),
  anchorM: fc.constantFrom(0, 6, 15, 33),
  depthM: fc.integer({ min: 0, max: 60 }),
  low: fc.constantFrom(0.2, 0.4, 0.85),
});

describe('the working of what a compartment tolerates', () => {
  it('ends, step by step by mathjs, at the limit that the plate draws', () => {
    law(
      fc.property(asked, ({ compartment, heliumShare, anchorM, depthM, low }) => {
        const gradientFactors = { low, high: 0.85 };
        const instant = at(depthM, gradientFactors);
        const { steps, answer } = toleratedWorking(instant, { compartment, heliumShare, anchorM });
        for (const { expression, values, result } of steps) {
          const numbers = Object.fromEntries(Object.entries(values).map(([symbol, { value }]) => [symbol, value]));
          expect(calculator.evaluate(expression, numbers)).toBeCloseTo(result.value, 9);
        }
        expect(answer.value).toBe(steps.at(-1)!.result.value);
        const site = curveSite({ ...defaultSettings(), gradientFactors });
        const { mLine, lowLine, highLine } = limitLines({
          site,
          gradientFactors,
          heliumShare,
          anchorM,
          deepestM: depthM,
        })[compartment - 1]!;
        const [model, under, over] = [mLine, lowLine, highLine].map(([, deep]) => deep.tensionBar) as [
          number,
          number,
          number,
        ];
        const expected =
          anchorM === 0 || depthM === 0 ? over : depthM >= anchorM ? under : over + ((under - over) * depthM) / anchorM;
        expect(answer.value).toBeCloseTo(expected, 9);
        expect(answer.value).toBeLessThanOrEqual(model);
      }),
    );
  });

  it('weighs the coefficients where helium is held, and takes one factor where low and high are one', () => {
    const ids = (heliumShare: number, low: number) =>
      toleratedWorking(at(9, { low, high: 0.85 }), { compartment: 5, heliumShare, anchorM: 15 }).steps.map(
        ({ id }) => id,
      );
    expect(ids(0.5, 0.4)).toEqual(['step:ambient', 'step:a', 'step:b', 'step:gf', 'step:tolerated']);
    expect(ids(0, 0.85)).toEqual(['step:ambient', 'step:tolerated']);
  });
});

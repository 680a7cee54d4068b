import * as fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import { computeTimeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';
import { modelNoStopMin } from '@/lib/tissue/models/model-figures';
import { loadCalculator, type Calculator } from '@/lib/working/calculator';
import { modelNoStopWorking } from '@/lib/working/model/model-no-stop-working';
import { law } from '@/tests/laws/law';

let calculator: Calculator;
beforeAll(async () => {
  calculator = await loadCalculator();
});

const site = { surfaceBar: 1.01325, barPerMetre: 0.1 };
const conventions = { airNitrogen: { obtained: 'derived' }, lungOffsetBar: { obtained: 'from memory' } } as const;

function at(depthM: number) {
  const settings = defaultSettings();
  const timeline = computeTimeline(
    { settings, steps: [{ kind: 'descend', toM: depthM, durationS: 0 }], lines: [] },
    1e9,
  );
  return { timeline, figures: figuresOf(timeline, settings), sample: timeline.length - 1 };
}

describe('the working of a no-stop time by a model of any age', () => {
  it.each(LIMIT_MODELS)('$name: ends, step by step by mathjs, at what the curve draws', (model) => {
    law(
      fc.property(fc.double({ min: 0, max: 80, noNaN: true }), (depthM) => {
        const { steps, answer, table, compartment } = modelNoStopWorking(at(depthM), { model, conventions });
        for (const { expression, values, result } of steps) {
          const numbers = Object.fromEntries(Object.entries(values).map(([symbol, { value }]) => [symbol, value]));
          const again = calculator.evaluate(expression, numbers);
          if (Number.isFinite(result.value))
            expect(Math.abs(again - result.value)).toBeLessThanOrEqual(1e-9 * Math.max(1, result.value));
          else expect(again).toBe(result.value);
        }
        const { value, leader } = modelNoStopMin(model, depthM, AIR, site);
        expect(answer.value).toBe(value);
        if (leader > 0) expect(compartment).toBe(leader);
        expect(Math.min(...table!.rows.map((row) => Number(row[3])))).toBe(value);
      }),
    );
  });

  it('says how a convention was come by', () => {
    const { steps } = modelNoStopWorking(at(30), { model: LIMIT_MODELS[0]!, conventions });
    const { values } = steps.find(({ id }) => id === 'step:held')!;
    expect([values['F_air']!.obtained, values['p_off']!.obtained]).toEqual(['derived', 'from memory']);
  });

  // By hand: 1.58 × 1.01325 = 1.600935 bar is tolerated; breathed 0.79 × 4.01325 = 3.1704675, held 0.79 × 1.01325 = 0.8004675;
  // 5 min × log2((3.1704675 − 0.8004675) / (3.1704675 − 1.600935)) = 5 × log2(2.37 / 1.5695325) = 2.973 min.
  it('is what Haldane’s ratio gives at 30 m, worked by hand', () => {
    expect(
      modelNoStopWorking(at(30), { model: LIMIT_MODELS.find(({ id }) => id === 'haldane-1908')!, conventions }).answer
        .value,
    ).toBeCloseTo(2.973, 3);
  });
});

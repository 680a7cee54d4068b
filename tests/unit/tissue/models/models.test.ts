import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import historic from '@/content/published/historic-models.json';
import mValues from '@/content/published/m-values.json';
import { MODEL_FILES, modelSchema } from '@/content/models/schema';
import { noStop } from '@/lib/ascent/no-stop';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';
import { HALDANE_1908 } from '@/lib/tissue/models/haldane-1908';
import { withConventions } from '@/lib/tissue/models/limit-model';
import {
  minutesToReach,
  modelBreathedBar,
  modelCeilingM,
  modelNoStopMin,
  modelSettled,
  modelTensionsAfter,
} from '@/lib/tissue/models/model-figures';
import { WORKMAN_1965 } from '@/lib/tissue/models/workman-1965';
import { zhL16 } from '@/lib/tissue/models/zh-l16';
import { AIR, OXYGEN } from '@/lib/physics/gas';
import { compartments } from '@/lib/tissue/coefficients';
import { alveolarInertBar } from '@/lib/tissue/alveolar';
import { tissuesSettledOnAir } from '@/lib/tissue/tissues';

const folder = new URL('../../../../content/models/', import.meta.url);
const SEA = { surfaceBar: 1.01325, barPerMetre: 0.1 };

describe('what is told of the models', () => {
  it('has a file for each and none besides', () => {
    expect(
      readdirSync(fileURLToPath(folder))
        .filter((name) => name.endsWith('.json'))
        .sort(),
    ).toEqual([...MODEL_FILES].sort());
  });

  it.each(MODEL_FILES)('keeps to its schema in %s', (name) => {
    expect(modelSchema.safeParse(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))).error?.issues ?? []).toEqual(
      [],
    );
  });

  it('lists every model once, oldest first', () => {
    const ids = LIMIT_MODELS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(MODEL_FILES.length);
    expect(ids.map((id) => `${id}.json`)).toEqual([...MODEL_FILES]);
    const years = LIMIT_MODELS.map(({ year }) => year);
    expect([...years].sort((one, other) => one - other)).toEqual(years);
  });
});

describe.each(LIMIT_MODELS)('the limits of $name', (model) => {
  it('give an ambient pressure back for the tension it tolerates', () => {
    model.compartments.forEach((_, c) => {
      for (const ambientBar of [0.6, 1, 2.5, 5])
        expect(model.toleratedAmbientBar(c, model.toleratedTensionBar(c, ambientBar))).toBeCloseTo(ambientBar, 12);
    });
  });

  it('allow slower compartments no more than faster ones, from the surface of the sea down', () => {
    model.compartments.forEach(({ halfTimeMin }, c) => {
      if (c === 0) return;
      expect(halfTimeMin).toBeGreaterThan(model.compartments[c - 1]!.halfTimeMin);
      for (const ambientBar of [1.01325, 2, 4])
        expect(model.toleratedTensionBar(c, ambientBar)).toBeLessThanOrEqual(
          model.toleratedTensionBar(c - 1, ambientBar) + 1e-12,
        );
    });
  });

  it('are numbered from 1, but for a first compartment that is named otherwise', () =>
    expect(model.compartments.slice(1).map(({ name }) => name)).toEqual(
      model.compartments.slice(1).map((_, c) => `${c + 2}`),
    ));

  it('are on nitrogen alone', () => {
    expect(model.gases).toEqual(['nitrogen']);
    expect(() => modelNoStopMin(model, 30, { o2: 0.18, he: 0.45 }, SEA)).toThrow(/nitrogen only/);
  });
});

describe('Haldane’s model', () => {
  it('and Workman’s begin with the compartment 1', () =>
    expect([HALDANE_1908, WORKMAN_1965].map(({ compartments: [first] }) => first!.name)).toEqual(['1', '1']));

  it('has the five published half-times', () =>
    expect(HALDANE_1908.compartments.map(({ halfTimeMin }) => halfTimeMin)).toEqual(historic.haldane.halfTimesMin));

  it('lets the absolute pressure be halved: settled on air at 6 bar, a diver may go to 3 bar', () => {
    const settled = modelSettled(HALDANE_1908, 6);
    expect(settled[0]).toBeCloseTo(4.74, 12);
    expect(HALDANE_1908.toleratedAmbientBar(3, settled[3]!)).toBeCloseTo(3, 12);
  });

  it('never asks for a stop where the pressure is less than twice the surface’s, 10.13 m', () => {
    expect(modelNoStopMin(HALDANE_1908, 10.13, AIR, SEA)).toEqual({ value: Infinity, leader: 0 });
    expect(minutesToReach(2, 1, 2, 5)).toBe(Infinity);
    expect(minutesToReach(2, 1, 1.5, 5)).toBe(Infinity);
    expect(modelNoStopMin(HALDANE_1908, 10.14, AIR, SEA).value).toBeLessThan(1000);
  });

  it('gives 3.0 min at 30 m, worked by hand for the 5 min compartment', () => {
    // 5 · log2((3.170468 − 0.800468)/(3.170468 − 1.600935)) = 5 · log2(1.50999) = 2.973.
    const { value, leader } = modelNoStopMin(HALDANE_1908, 30, AIR, SEA);
    expect(value).toBeCloseTo(2.973, 3);
    expect(leader).toBe(1);
  });

  it('puts the first ceiling of a diver settled at 30 m at half the pressure, 9.9 m', () => {
    expect(modelCeilingM(HALDANE_1908, modelSettled(HALDANE_1908, 4.01325), SEA).value).toBeCloseTo(
      (4.01325 / 2 - 1.01325) / 0.1,
      9,
    );
  });

  it('names the compartment that has the deepest ceiling, and none while the surface is tolerated', () => {
    expect(modelCeilingM(HALDANE_1908, [2.5, 1, 1.9, 1, 1], SEA).leader).toBe(1);
    expect(modelCeilingM(HALDANE_1908, [1, 1, 1.9, 3, 1], SEA).leader).toBe(4);
    expect(modelCeilingM(HALDANE_1908, [1, 1, 1, 1, 1], SEA)).toEqual({ value: 0, leader: 0 });
  });
});

describe('Workman’s model', () => {
  it('tolerates M0 at the surface and ΔM more for each metre, as published', () => {
    historic.workman.forEach(({ halfTimeMin, surfacingMsw, slope }, c) => {
      expect(WORKMAN_1965.compartments[c]!.halfTimeMin).toBe(halfTimeMin);
      expect(WORKMAN_1965.toleratedTensionBar(c, 1.01325)).toBeCloseTo(surfacingMsw / 10, 12);
      expect(WORKMAN_1965.toleratedTensionBar(c, 2.01325)).toBeCloseTo(surfacingMsw / 10 + slope, 12);
    });
  });

  it('gives 22.7 min at 30 m, worked by hand for the 10 min compartment', () => {
    // 10 · log2((3.170468 − 0.800468)/(3.170468 − 2.68)) = 10 · log2(4.8321) = 22.73.
    const { value, leader } = modelNoStopMin(WORKMAN_1965, 30, AIR, SEA);
    expect(value).toBeCloseTo(22.73, 2);
    expect(leader).toBe(2);
  });

  it('is within five minutes of the navy’s 25 min at 100 fsw, which is of its time', () => {
    // US Navy, Revision 4: 25 min at 100 fsw. Its bottom time includes the way down.
    expect(Math.abs(modelNoStopMin(WORKMAN_1965, 30.6, AIR, SEA).value - 25)).toBeLessThan(5);
  });
});

describe('ZH-L16 as a limit model', () => {
  it.each(['A', 'B', 'C'] as const)('%s has the published surfacing limits, in metres of sea water', (variant) => {
    const model = zhL16(variant, '1b');
    const rows = mValues.values.filter(({ gas, compartment }) => gas === 'nitrogen' && compartment !== '1');
    rows.forEach((row, c) => {
      const published = (row.surfacingMsw as Record<string, number>)[variant]!;
      expect(Math.abs(model.toleratedTensionBar(c, 1) * 10 - published)).toBeLessThanOrEqual(
        mValues.tolerances.surfacing.value + 1e-9,
      );
    });
  });

  it('names its first compartment as asked', () => {
    expect(zhL16('C', '1b').compartments[0]).toEqual({ name: '1b', halfTimeMin: 5 });
    expect(zhL16('C', '1').compartments[0]).toEqual({ name: '1', halfTimeMin: 4 });
  });

  it('numbers those after the first from 2 to 16', () => {
    const names = zhL16('C')
      .compartments.slice(1)
      .map(({ name }) => name);
    expect(names).toEqual(Array.from({ length: 15 }, (_, i) => `${i + 2}`));
  });

  it.each(['A', 'B', 'C'] as const)('%s gives the engine’s no-stop times without a gradient factor', (variant) => {
    const load = {
      ...SEA,
      compartments: compartments(variant, '1b'),
      ...tissuesSettledOnAir(SEA.surfaceBar, 1),
      at: 0,
    };
    for (let depthM = 9; depthM <= 60; depthM += 3) {
      const engine = noStop(
        load,
        { nitrogenBar: alveolarInertBar(SEA.surfaceBar + depthM * 0.1, 0.79), heliumBar: 0 },
        1,
      );
      const own = modelNoStopMin(zhL16(variant), depthM, AIR, SEA);
      expect(own.value).toBeCloseTo(engine.minutes, 9);
      expect(own.leader).toBe(engine.leader);
    }
  });

  it('allows less from A to B to C', () => {
    for (const depthM of [18, 24, 30]) {
      const [a, b, c] = (['A', 'B', 'C'] as const).map(
        (variant) => modelNoStopMin(zhL16(variant), depthM, AIR, SEA).value,
      );
      expect(a!).toBeGreaterThanOrEqual(b!);
      expect(b!).toBeGreaterThanOrEqual(c!);
    }
    expect(modelNoStopMin(zhL16('A'), 18, AIR, SEA).value).toBeGreaterThan(
      modelNoStopMin(zhL16('C'), 18, AIR, SEA).value,
    );
  });
});

describe('conventions', () => {
  it('move a model’s figures with its constants untouched', () => {
    const dry = modelNoStopMin(WORKMAN_1965, 30, AIR, SEA).value;
    const moist = modelNoStopMin(withConventions(WORKMAN_1965, { lungOffsetBar: 0.0627 }), 30, AIR, SEA).value;
    expect(moist).toBeGreaterThan(dry);
    expect(modelBreathedBar(withConventions(WORKMAN_1965, { airNitrogen: 0.8 }), AIR, 1)).toBe(0.8);
  });

  it('concern air: another mixture is taken at its word', () => {
    expect(modelBreathedBar(withConventions(WORKMAN_1965, { airNitrogen: 0.8 }), { o2: 0.32, he: 0 }, 2)).toBeCloseTo(
      1.36,
      12,
    );
    expect(modelBreathedBar(WORKMAN_1965, OXYGEN, 2)).toBe(0);
  });
});

describe('a model’s tensions', () => {
  it('go half way in a half-time', () => {
    const after = modelTensionsAfter(HALDANE_1908, modelSettled(HALDANE_1908, 1), 2.37, 10);
    expect(after[1]).toBeCloseTo((0.79 + 2.37) / 2, 12);
    expect(after[0]).toBeCloseTo(2.37 - (2.37 - 0.79) / 4, 12);
  });

  it('past a limit leave no time', () =>
    expect(modelNoStopMin(HALDANE_1908, 20, AIR, SEA, new Float64Array(5).fill(2))).toEqual({ value: 0, leader: 1 }));
  it('within every limit need no ceiling', () =>
    expect(modelCeilingM(WORKMAN_1965, modelSettled(WORKMAN_1965, 1.01325), SEA)).toEqual({ value: 0, leader: 0 }));
});

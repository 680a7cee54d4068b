import fc from 'fast-check';
import type { Dive, Step } from '@/lib/dive/dive';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Cylinder } from '@/lib/dive/supply';
import { AIR } from '@/lib/physics/gas';

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const anyGas = fc
  .tuple(fc.integer({ min: 5, max: 100 }), fc.integer({ min: 0, max: 95 }))
  .map(([o2, he]) => ({ o2: o2 / 100, he: Math.min(he, 100 - o2) / 100 }));
const GASES = [AIR, { o2: 0.5, he: 0 }, { o2: 0.18, he: 0.45 }];

const anyCylinder: fc.Arbitrary<Omit<Cylinder, 'name'>> = fc
  .record({
    waterL: between(1, 40),
    workingBar: between(20, 300),
    filled: between(0.1, 1),
    gas: fc.constantFrom(...GASES),
  })
  .map(({ filled, ...one }) => ({ ...one, startBar: one.workingBar * filled }));
const anyCylinders = fc
  .array(anyCylinder, { minLength: 1, maxLength: 4 })
  .map((all) => all.map((one, i) => ({ ...one, name: `cylinder ${'abcd'[i]!}` })));

const anyConsumption = fc.record(
  { bottomLMin: between(5, 60), descentLMin: between(5, 60), ascentLMin: between(5, 60), stopsLMin: between(5, 60) },
  { requiredKeys: [] },
);

type Move = { toM: number; mMin: number; stayS: number; gas: (typeof GASES)[number] | undefined };
const anyMove: fc.Arbitrary<Move> = fc.record({
  toM: between(1, 60),
  mMin: between(2, 60),
  stayS: between(1, 1800),
  gas: fc.option(fc.constantFrom(...GASES), { nil: undefined }),
});

/** A day of dives through some depths, with cylinders. */
export const anySuppliedDay: fc.Arbitrary<Dive> = fc
  .record({
    dives: fc.array(fc.array(anyMove, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 2 }),
    cylinders: anyCylinders,
    consumption: anyConsumption,
  })
  .map(({ dives, cylinders, consumption }) => {
    const steps = dives.flatMap((moves, i): Step[] => {
      let fromM = 0;
      const own: Step[] = [];
      const go = (toM: number, mMin: number) => {
        if (toM !== fromM)
          own.push({ kind: toM > fromM ? 'descend' : 'ascend', toM, durationS: (Math.abs(toM - fromM) / mMin) * 60 });
        fromM = toM;
      };
      for (const { toM, mMin, stayS, gas } of moves) {
        go(toM, mMin);
        if (gas) own.push({ kind: 'switch', gas });
        own.push({ kind: 'stay', durationS: stayS });
      }
      go(0, 9);
      return i === 0 ? own : [{ kind: 'interval', durationS: 3600 }, ...own];
    });
    return { settings: { ...defaultSettings(), supply: { cylinders, consumption } }, steps, lines: [] };
  });

/** The samples at which a figure is less than at the one before, by more than rounding. */
export const fallsOf = (figure: Float64Array, rounding: number): number[] =>
  [...figure.keys()].filter((i) => i > 0 && !(figure[i]! >= figure[i - 1]! - rounding));

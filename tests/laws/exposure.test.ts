import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dive, Step } from '@/lib/dive/dive';
import { defaultSettings } from '@/lib/dive/default-settings';
import { parseScript, writeScript } from '@/lib/dive/script';
import { computeTimeline } from '@/lib/dive/timeline';
import type { Cylinder } from '@/lib/dive/supply';
import { equivalentAirDepthM, equivalentNarcoticDepthM, gasModM, ambientBarAt } from '@/lib/exposure/gas-depths';
import { GAS_LAWS } from '@/lib/exposure/gas-law';
import { gasSupplyOf, type SupplyUnderLaw } from '@/lib/exposure/gas-supply';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { reserveFor } from '@/lib/exposure/reserve';
import { turnPressure, TURN_RULES } from '@/lib/exposure/turn-pressure';
import { AIR } from '@/lib/physics/gas';
import { law } from './law';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const anyGas = fc
  .tuple(fc.integer({ min: 5, max: 100 }), fc.integer({ min: 0, max: 95 }))
  .map(([o2, he]) => ({ o2: o2 / 100, he: Math.min(he, 100 - o2) / 100 }));
const anySite = fc.record({ surfaceBar: between(0.5, 1.1), barPerMetre: between(0.09, 0.11) });
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
const anySuppliedDay: fc.Arbitrary<Dive> = fc
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
const fallsOf = (figure: Float64Array, rounding: number): number[] =>
  [...figure.keys()].filter((i) => i > 0 && !(figure[i]! >= figure[i - 1]! - rounding));

describe('depths of gas', () => {
  it('the equivalent air depth of air is the depth itself', () => {
    law(
      fc.property(between(0, 300), anySite, (depthM, site) => {
        expect(equivalentAirDepthM(AIR, depthM, site)).toBe(depthM);
        expect(equivalentNarcoticDepthM(AIR, depthM, 'nitrogen', site)).toBe(depthM);
      }),
      500,
    );
  });

  it('at its deepest a gas has exactly the oxygen pressure of the limit', () => {
    law(
      fc.property(anyGas, between(0.2, 1.6), anySite, (gas, limitBar, site) => {
        expect(gas.o2 * ambientBarAt(gasModM(gas, limitBar, site), site)).toBeCloseTo(limitBar, 9);
      }),
      500,
    );
  });

  it('more nitrogen never makes for a shallower equivalent', () => {
    law(
      fc.property(anyGas, between(0, 100), anySite, between(0, 1), (gas, depthM, site, part) => {
        const leaner = { o2: gas.o2 * part, he: gas.he };
        expect(equivalentNarcoticDepthM(leaner, depthM, 'nitrogen', site)).toBeGreaterThanOrEqual(
          equivalentNarcoticDepthM(gas, depthM, 'nitrogen', site) - 1e-9,
        );
        expect(equivalentNarcoticDepthM(leaner, depthM, 'nitrogen and oxygen', site)).toBe(
          equivalentNarcoticDepthM(gas, depthM, 'nitrogen and oxygen', site),
        );
      }),
      500,
    );
  });
});

describe('oxygen', () => {
  const anySplit = fc.record({
    o2: between(0.2, 1),
    fromM: between(1, 60),
    toM: between(1, 60),
    durationS: between(1, 5000),
    part: between(0.01, 0.99),
  });

  it('adds up across a leg split anywhere', () => {
    law(
      fc.property(anySplit, ({ o2, fromM, toM, durationS, part }) => {
        const leg = (endM: number, spanS: number, startM: number): Step =>
          endM === startM
            ? { kind: 'stay', durationS: spanS }
            : { kind: endM > startM ? 'descend' : 'ascend', toM: endM, durationS: spanS };
        const exposure = (legs: Step[]) => {
          const settings = { ...defaultSettings(), gas: { o2, he: 0 } };
          return oxygenExposureOf(computeTimeline({ settings, steps: [leg(fromM, 60, 0), ...legs], lines: [] }, 3600));
        };
        const middleM = fromM + (toM - fromM) * part;
        const whole = exposure([leg(toM, durationS, fromM)]);
        const split = exposure([leg(middleM, durationS * part, fromM), leg(toM, durationS * (1 - part), middleM)]);
        for (const figure of ['single', 'daily', 'pulmonaryUnits'] as const) {
          const sum = split.legs[1]![figure] + split.legs[2]![figure];
          expect(Math.abs(sum - whole.legs[1]![figure])).toBeLessThanOrEqual(1e-9 * Math.max(1, sum));
        }
        expect(split.singleFraction.at(-1)).toBeCloseTo(whole.singleFraction.at(-1)!, 8);
      }),
      500,
    );
  });

  it('of a dive never falls but at the surface between two, and is never less than nothing', () => {
    law(
      fc.property(anySuppliedDay, (dive) => {
        const timeline = computeTimeline(dive, 60);
        const { singleFraction, dailyFraction, pulmonaryUnits } = oxygenExposureOf(timeline);
        const atSurface = (i: number) => timeline.legs[timeline.leg[i]!]!.interval;
        expect(fallsOf(singleFraction, 1e-12).filter((i) => !atSurface(i - 1))).toEqual([]);
        expect(fallsOf(dailyFraction, 1e-12)).toEqual([]);
        expect(fallsOf(pulmonaryUnits, 1e-9)).toEqual([]);
        expect(singleFraction.every((fraction) => fraction >= 0)).toBe(true);
      }),
      150,
    );
  });
});

describe('the gas supply', () => {
  const bothLaws = (dive: Dive, everyS: number): readonly SupplyUnderLaw[] => {
    const supply = gasSupplyOf(computeTimeline(dive, everyS), dive.settings)!;
    return [supply.ideal, supply.real];
  };

  it('gas used never falls, and no gauge rises within a dive', () => {
    law(
      fc.property(anySuppliedDay, (dive) => {
        const timeline = computeTimeline(dive, 60);
        const diveOf = (i: number) => timeline.legs[timeline.leg[i]!]!.diveNumber;
        for (const { cylinders, unsuppliedL } of bothLaws(dive, 60)) {
          expect(fallsOf(unsuppliedL, 1e-9)).toEqual([]);
          for (const { usedL, pressureBar } of cylinders) {
            expect(fallsOf(usedL, 1e-9)).toEqual([]);
            const rises = fallsOf(
              pressureBar.map((bar) => -bar),
              1e-9,
            );
            expect(rises.filter((i) => diveOf(i) === diveOf(i - 1))).toEqual([]);
          }
        }
      }),
      150,
    );
  });

  it('every breath comes from a cylinder or is missing, the same in all under both laws', () => {
    law(
      fc.property(anySuppliedDay, (dive) => {
        const [ideal, real] = bothLaws(dive, 3600).map(({ cylinders, unsuppliedL }) =>
          cylinders.reduce((sum, { usedL }) => sum + usedL.at(-1)!, unsuppliedL.at(-1)!),
        );
        expect(Math.abs(ideal! - real!)).toBeLessThan(1e-6 * Math.max(1, ideal!));
      }),
      150,
    );
  });

  it('does not depend on how finely the dive is sampled', () => {
    law(
      fc.property(anySuppliedDay, (dive) => {
        const [coarse, fine] = [3600, 20].map((everyS) => bothLaws(dive, everyS));
        fine!.forEach(({ cylinders, runOuts }, law) => {
          expect(runOuts).toEqual(coarse![law]!.runOuts);
          cylinders.forEach(({ usedL }, i) =>
            expect(usedL.at(-1)).toBeCloseTo(coarse![law]!.cylinders[i]!.usedL.at(-1)!, 6),
          );
        });
      }),
      60,
    );
  });

  it('no diver draws on a cylinder that holds less than the water’s pressure', () => {
    law(
      fc.property(anySuppliedDay, (dive) => {
        const timeline = computeTimeline(dive, 30);
        for (const { cylinders, spells } of bothLaws(dive, 30)) {
          let spell = 0;
          for (let i = 0; i < timeline.length; i += 1) {
            while (
              spell < spells.length - 1 &&
              (spells[spell]!.leg < timeline.leg[i]! || spells[spell]!.endS < timeline.timeS[i]!)
            )
              spell += 1;
            const drawn = cylinders[spells[spell]!.cylinder];
            if (drawn && timeline.timeS[i]! < spells[spell]!.endS)
              expect(drawn.pressureBar[i]! + 1.01325).toBeGreaterThanOrEqual(timeline.ambientBar[i]! - 1e-5);
          }
        }
      }),
      100,
    );
  });

  it('a pressure told back from a content is the pressure', () => {
    law(
      fc.property(anyGas, between(1, 50), between(0.1, 450), (gas, waterL, bar) => {
        for (const law of GAS_LAWS)
          expect(law.absoluteBar({ waterL, gas }, law.contentL({ waterL, gas }, bar))).toBeCloseTo(bar, 7);
      }),
      500,
    );
  });

  it('written as a script and read again is the same', () => {
    law(
      fc.property(anySuppliedDay, ({ settings }) => {
        const read = parseScript(writeScript({ settings, steps: [], lines: [] }));
        expect(read.ok && read.dive.settings.supply).toEqual(settings.supply);
      }),
      300,
    );
  });
});

describe('the reserve', () => {
  const square = (depthM: number, minutes: number, sharing: number): number => {
    const steps: Step[] = [
      { kind: 'descend', toM: depthM, durationS: 120 },
      { kind: 'stay', durationS: minutes * 60 },
      { kind: 'ascend', toM: 0, durationS: (depthM / 9) * 60 },
    ];
    return reserveFor({ settings: defaultSettings(), steps, lines: [] }, { sharingMin: sharing }).needs.reduce(
      (sum, { litres }) => sum + litres,
      0,
    );
  };

  it('grows with depth, with time at depth and with the time to share', () => {
    law(
      fc.property(
        between(5, 55),
        between(0.1, 15),
        between(1, 40),
        between(0, 3),
        (depthM, deeperM, minutes, sharing) => {
          const litres = square(depthM, minutes, sharing);
          expect(square(depthM + deeperM, minutes, sharing)).toBeGreaterThan(litres);
          expect(square(depthM, minutes + 5, sharing)).toBeGreaterThanOrEqual(litres - 1e-9);
          expect(square(depthM, minutes, sharing + 1)).toBeGreaterThan(litres);
        },
      ),
      200,
    );
  });

  it('is left at the turn, whatever the rule, once as much is used on the way back as on the way out', () => {
    law(
      fc.property(between(1, 300), between(0, 1), (startBar, part) => {
        const reserveBar = startBar * part;
        for (const rule of TURN_RULES) {
          const { turnBar } = turnPressure(rule, startBar, reserveBar);
          expect(turnBar).toBeLessThanOrEqual(startBar);
          const backBar = rule === 'all usable' ? 0 : startBar - turnBar;
          expect(turnBar - backBar).toBeGreaterThanOrEqual(reserveBar - 1e-9);
        }
      }),
      300,
    );
  });
});

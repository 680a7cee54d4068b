import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dive, Step } from '@/lib/dive/dive';
import { defaultSettings } from '@/lib/dive/default-settings';
import { parseScript, writeScript } from '@/lib/dive/script';
import { computeTimeline } from '@/lib/dive/timeline';
import { IDEAL_GAS, REAL_GAS } from '@/lib/exposure/gas-law';
import { gasSupplyOf, type SupplyUnderLaw } from '@/lib/exposure/gas-supply';
import { reserveFor } from '@/lib/exposure/reserve';
import { turnPressure, TURN_RULES } from '@/lib/exposure/turn-pressure';
import { law } from '../law';
import { anyGas, anySuppliedDay, fallsOf, between } from './supplied-day';

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
        for (const law of [IDEAL_GAS, REAL_GAS])
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

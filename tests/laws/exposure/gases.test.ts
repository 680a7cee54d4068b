import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Step } from '@/lib/dive/dive';
import { defaultSettings } from '@/lib/dive/default-settings';
import { computeTimeline } from '@/lib/dive/timeline';
import { equivalentAirDepthM, equivalentNarcoticDepthM, gasModM, ambientBarAt } from '@/lib/exposure/gas-depths';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { AIR } from '@/lib/physics/gas';
import { law } from '../law';
import { anyGas, anySuppliedDay, fallsOf, between } from './supplied-day';

const anySite = fc.record({ surfaceBar: between(0.5, 1.1), barPerMetre: between(0.09, 0.11) });

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

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breathedAt } from '@/lib/ascent/breathed';
import { ceilingAtGf, ceilingOnLine } from '@/lib/ascent/ceiling';
import { figuresAt, figuresOf, loadAt } from '@/lib/ascent/figures';
import { noStop } from '@/lib/ascent/no-stop';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, gasAt, type Timeline } from '@/lib/dive/timeline';
import { nitrogenFraction } from '@/lib/physics/gas';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { anyDay, heliumDay, nitrogenDay } from '../arbitrary-dive';
import { anyDive } from '../dives';
import { law } from '../law';

const lengthS = (dive: Dive) =>
  dive.steps.reduce((sum, step) => sum + (step.kind === 'switch' ? 0 : step.durationS), 0);

/** First sample of each leg and the last of all. */
function legBorders({ leg, length }: Timeline): number[] {
  return Array.from({ length }, (_, i) => i).filter((i) => i === 0 || leg[i] !== leg[i - 1] || i === length - 1);
}

/** How much the engine's own figures may differ because the sums were made in another order. */
const ROUNDING = 1e-9;

/** As expect would, and quick enough for every sample of many dives. */
function same(what: string, one: number, other: number, tolerance = ROUNDING): void {
  if (!(Math.abs(one - other) <= tolerance)) expect.fail(`${what}: ${one} and ${other}`);
}

describe('tissues', () => {
  it('are the same at every change of step however many samples lie between', () => {
    law(
      fc.property(anyDay, (dive) => {
        const inOneStep = computeTimeline(dive, lengthS(dive) + 1);
        for (const everyS of [1, 7, 60]) {
          const inMany = computeTimeline(dive, everyS);
          const many = legBorders(inMany);
          const one = legBorders(inOneStep);
          expect(many).toHaveLength(one.length);
          one.forEach((sample, border) => {
            for (let c = 0; c < COMPARTMENTS; c += 1) {
              const at = many[border]! * COMPARTMENTS + c;
              same(`nitrogen of ${c + 1}`, inMany.nitrogenBar[at]!, inOneStep.nitrogenBar[sample * COMPARTMENTS + c]!);
              same(`helium of ${c + 1}`, inMany.heliumBar[at]!, inOneStep.heliumBar[sample * COMPARTMENTS + c]!);
            }
          });
        }
      }),
      40,
    );
  });

  it('draw steadily nearer to the gas breathed while the depth stands still, and never pass it', () => {
    law(
      fc.property(anyDay, (dive) => {
        const timeline = computeTimeline(dive, 20);
        for (let i = 1; i < timeline.length; i += 1) {
          const leg = timeline.legs[timeline.leg[i - 1]!]!;
          if (leg.fromM !== leg.toM || timeline.timeS[i] === timeline.timeS[i - 1]) continue;
          const breathed = breathedAt(timeline, gasAt(timeline, i - 1), timeline.ambientBar[i - 1]!);
          for (let c = 0; c < COMPARTMENTS; c += 1) {
            for (const gas of ['nitrogenBar', 'heliumBar'] as const) {
              const before = timeline[gas][(i - 1) * COMPARTMENTS + c]! - breathed[gas];
              const after = timeline[gas][i * COMPARTMENTS + c]! - breathed[gas];
              const nearer =
                Math.abs(after) <= Math.abs(before) + 1e-12 && (after * before >= 0 || Math.abs(after) < 1e-12);
              if (!nearer)
                expect.fail(`${gas} of compartment ${c + 1} went from ${before} to ${after} off the gas breathed`);
            }
          }
        }
      }),
      60,
    );
  });

  it('come out the same in memory used before', () => {
    law(
      fc.property(anyDay, anyDay, (before, dive) => {
        const used = computeTimeline(before, 10);
        const usedFigures = figuresOf(used, before.settings);
        const fresh = computeTimeline(dive, 10);
        const again = computeTimeline(dive, 10, { reuse: used });
        expect([...again.nitrogenBar]).toEqual([...fresh.nitrogenBar]);
        expect([...again.heliumBar]).toEqual([...fresh.heliumBar]);
        expect([...again.timeS]).toEqual([...fresh.timeS]);
        expect([...again.leg]).toEqual([...fresh.leg]);
        const figures = figuresOf(fresh, dive.settings);
        const figuresAgain = figuresOf(again, dive.settings, usedFigures);
        const { limits: _, ...arrays } = figures;
        for (const name of Object.keys(arrays) as (keyof typeof arrays)[])
          expect([...figuresAgain[name]]).toEqual([...figures[name]]);
      }),
      30,
    );
  });
});

describe('figures of a whole timeline', () => {
  it.each([
    ['with nitrogen alone', nitrogenDay],
    ['with helium', heliumDay],
  ])('are what the functions for one instant say at every sample, %s', (_, days) => {
    law(
      fc.property(days, (dive) => {
        const timeline = computeTimeline(dive, 30);
        const figures = figuresOf(timeline, dive.settings);
        const { low, high } = dive.settings.gradientFactors;
        for (let i = 0; i < timeline.length; i += 1) {
          const load = loadAt(timeline, i);
          const breathed = breathedAt(timeline, gasAt(timeline, i), timeline.ambientBar[i]!);
          const line = ceilingOnLine(load, { low, high }, figures.anchorM[i]!);
          const left = line.depthM > 0 ? { minutes: 0, leader: line.leader } : noStop(load, breathed, high);
          same('ceiling at low', figures.ceilingAtLowM[i]!, ceilingAtGf(load, low).depthM);
          same('ceiling at high', figures.ceilingAtHighM[i]!, ceilingAtGf(load, high).depthM);
          same('ceiling', figures.ceilingM[i]!, line.depthM);
          if (line.depthM > ROUNDING) same('leader', figures.ceilingLeader[i]!, line.leader);
          const told = figures.noStopMin[i]!;
          if (left.minutes === Infinity || told === Infinity) {
            // A time found just short of the end of the search may be told either way.
            if (Math.min(left.minutes, told) < 99.9)
              expect.fail(`${told} min, by the function for one instant ${left.minutes}`);
          } else {
            same('no-stop time', told, left.minutes, 1e-6 * Math.max(1, left.minutes));
            if (left.minutes > 0) same('leader', figures.noStopLeader[i]!, left.leader);
          }
        }
      }),
      25,
    );
  });

  it('are numbers for any dive a script can say, and so is all that is said of one sample', () => {
    law(
      fc.property(anyDive, fc.nat(), (dive, pick) => {
        const timeline = computeTimeline(dive, Math.max(30, lengthS(dive) / 400));
        const figures = figuresOf(timeline, dive.settings);
        const { limits: _, ...arrays } = figures;
        for (const values of [
          timeline.timeS,
          timeline.depthM,
          timeline.ambientBar,
          timeline.nitrogenBar,
          timeline.heliumBar,
          ...Object.values(arrays),
        ]) {
          for (const value of values) if (!(value >= 0)) expect.fail(`a figure is ${value}`);
        }
        const now = figuresAt(timeline, figures, pick % timeline.length);
        const { ceiling, noStop: left, creditedNoStopMin, supersaturation, surfacingSupersaturation, schedule } = now;
        for (const value of [
          ceiling.depthM,
          left.minutes,
          creditedNoStopMin,
          schedule.timeToSurfaceMin,
          schedule.anchorM,
        ])
          expect(value).toBeGreaterThanOrEqual(0);
        for (const value of [supersaturation.value, surfacingSupersaturation.value])
          expect(Number.isFinite(value)).toBe(true);
        for (const part of schedule.parts)
          for (const value of [part.fromM, part.toM, part.minutes]) expect(Number.isFinite(value)).toBe(true);
      }),
      60,
    );
  });

  it('never differ by how finely the dive is sampled', () => {
    law(
      fc.property(anyDay, (dive) => {
        const coarse = computeTimeline(dive, 60);
        const fine = computeTimeline(dive, 5);
        const coarseFigures = figuresOf(coarse, dive.settings);
        const fineFigures = figuresOf(fine, dive.settings);
        let f = 0;
        for (let i = 0; i < coarse.length; i += 1) {
          while (fine.timeS[f]! < coarse.timeS[i]! - 1e-6 || (fine.leg[f]! < coarse.leg[i]! && f + 1 < fine.length))
            f += 1;
          same('tension', fine.nitrogenBar[f * COMPARTMENTS + 4]!, coarse.nitrogenBar[i * COMPARTMENTS + 4]!);
          same('ceiling at high', fineFigures.ceilingAtHighM[f]!, coarseFigures.ceilingAtHighM[i]!, 1e-7);
          if (coarseFigures.noStopMin[i]! < 90)
            same('no-stop time', fineFigures.noStopMin[f]!, coarseFigures.noStopMin[i]!, 1e-5);
        }
      }),
      25,
    );
  });

  it('hold as much inert gas as the lungs give and no more: no tension is above what was ever breathed', () => {
    law(
      fc.property(nitrogenDay, (dive) => {
        const timeline = computeTimeline(dive, 30);
        let most = timeline.nitrogenBar.slice(0, COMPARTMENTS).reduce((one, other) => Math.max(one, other));
        for (let i = 0; i < timeline.length; i += 1) {
          const leg = timeline.legs[timeline.leg[i]!]!;
          const deepestBar = timeline.surfaceBar + Math.max(leg.fromM, leg.toM) * timeline.barPerMetre;
          most = Math.max(most, (deepestBar - timeline.lungOffsetBar) * nitrogenFraction(gasAt(timeline, i)));
          for (let c = 0; c < COMPARTMENTS; c += 1)
            if (timeline.nitrogenBar[i * COMPARTMENTS + c]! > most + ROUNDING)
              expect.fail('a tension is above all that was breathed');
        }
      }),
      60,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { shareAfterHalfTimes, stepBetweenDepths, stepDive, stepResponses } from '@/lib/curves/half-times';
import { curveSite } from '@/lib/curves/curve-site';
import { computeTimeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { compartments } from '@/lib/tissue/coefficients';
import { diveOf, settingsWith, stay } from './scripted';

describe('half-times', () => {
  it.each([
    [0, 0],
    [1, 0.5],
    [2, 0.75],
    [3, 0.875],
    [4, 0.9375],
    [5, 0.96875],
    [6, 0.984375],
  ])('after %i the share followed is %f', (n, share) => {
    expect(shareAfterHalfTimes(n)).toBe(share);
  });
});

describe('sixteen answers to a step', () => {
  const all = compartments('C', '1b');

  it('are half way after each one’s own half-time', () => {
    stepResponses(all, 'nitrogen', 0.75, 3.15, [...all.nitrogenHalfTimeMin]).forEach(({ tensionBar, share }, c) => {
      expect(tensionBar[c]).toBeCloseTo(1.95, 12);
      expect(share[c]).toBe(0.5);
    });
  });

  it('take six half-times to be at 98.4%', () => {
    const [fastest] = stepResponses(all, 'helium', 0, 1, [6 * 1.88]);
    expect(fastest!.afterHalfTimesMin.at(-1)).toBeCloseTo(11.28, 12);
    expect(fastest!.tensionBar[0]).toBeCloseTo(0.984375, 9);
  });

  it('are what the engine’s tissues do at depth', () => {
    const settings = settingsWith();
    const { startBar, breathedBar } = stepBetweenDepths(curveSite(settings), AIR, 0, 30);
    const timeline = computeTimeline(diveOf({}, { kind: 'descend', toM: 30, durationS: 1e-7 }, stay(40)), 600);
    const answers = stepResponses(all, 'nitrogen', startBar, breathedBar, [40]);
    answers.forEach(({ tensionBar }, c) =>
      expect(tensionBar[0]).toBeCloseTo(timeline.nitrogenBar[(timeline.length - 1) * 16 + c]!, 8),
    );
  });

  it.each([
    [0, 30],
    [30, 0],
    [12, 40],
    [40, 12],
    [20, 20],
  ])('are those of the dive that is settled at %d m and goes at once to %d m', (fromM, toM) => {
    const settings = settingsWith();
    const { startBar, breathedBar } = stepBetweenDepths(curveSite(settings), AIR, fromM, toM);
    const timeline = computeTimeline(stepDive(settings, all, fromM, toM, 25), 1e9);
    const answers = stepResponses(all, 'nitrogen', startBar, breathedBar, [25]);
    answers.forEach(({ tensionBar }, c) =>
      expect(timeline.nitrogenBar[(timeline.length - 1) * 16 + c]).toBeCloseTo(tensionBar[0]!, 7),
    );
  });
});

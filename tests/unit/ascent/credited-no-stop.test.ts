import { describe, expect, it } from 'vitest';
import { ascentStartAt } from '@/lib/ascent/plan/ascent-start';
import { creditedNoStopMin } from '@/lib/ascent/credited-no-stop';
import { figuresOf } from '@/lib/ascent/figures';
import { ascentPlanner } from '@/lib/ascent/plan/schedule';
import { computeTimeline } from '@/lib/dive/timeline';
import { along, placeAt, settled, worstBar, type Diver, type Way } from '../../laws/second-model/second-model';
import { diveOf, down, stay } from '../rules/made-dives';

const AIR = { o2: 0.21, he: 0 };
const TRIMIX = { o2: 0.18, he: 0.45 };
const FACTORS = { low: 0.85, high: 0.85 };
const PLACE = placeAt(0);
const STEP_S = 2;

/** The credited time after going down in so many minutes and staying some whole minutes, by the engine. */
function credited(depthM: number, downMin: number, stayedMin: number, ascentMMin: number, gas = AIR): number {
  const dive = diveOf([down(depthM, downMin * 60), stay(7200)], { gradientFactors: FACTORS, gas });
  const settings = { ...dive.settings, plan: { ...dive.settings.plan, ascentMMin } };
  const timeline = computeTimeline({ ...dive, settings }, 60);
  const start = ascentStartAt(timeline, figuresOf(timeline, settings), downMin + stayedMin);
  return creditedNoStopMin(settings, timeline, start);
}

/** The same by the second model: how long a diver may stay until straight up breaks the line, to a twentieth of a minute. */
function creditedBySecondModel(depthM: number, downMin: number, ascentMMin: number, gas = AIR): number {
  const way = (fromM: number, toM: number, minutes: number): Way => ({ fromM, toM, minutes, ...gas });
  const after = (diver: Diver, next: Way): Diver => [...along(PLACE, diver, FACTORS, [next], STEP_S)].at(-1)!.diver;
  const arrived = after(settled(PLACE), way(0, depthM, downMin));
  const up = [way(depthM, 0, depthM / ascentMMin)];
  let [may, mayNot] = [0, 64];
  while (mayNot - may > 0.05) {
    const middle = (may + mayNot) / 2;
    if (worstBar(PLACE, after(arrived, way(depthM, depthM, middle)), FACTORS, up, STEP_S) > 0) mayNot = middle;
    else may = middle;
  }
  return mayNot;
}

describe('the no-stop time with credit for the way up', () => {
  it.each([
    [30, 2, 9, AIR],
    [21, 1, 3, AIR],
    [60, 3, 9, AIR],
    [45, 2, 9, TRIMIX],
  ])('at %i m, reached in %i min, at %i m/min on %j is the second model’s', (depthM, downMin, ascentMMin, gas) => {
    const second = creditedBySecondModel(depthM, downMin, ascentMMin, gas);
    expect(second).toBeGreaterThan(0.5);
    expect(Math.abs(credited(depthM, downMin, 0, ascentMMin, gas) - second)).toBeLessThan(0.1);
  });

  it('is none where a slow way up from the deep needs a stop at once', () => expect(credited(60, 3, 0, 3)).toBe(0));

  it('is without end where no stay ever asks for a stop', () => {
    expect(credited(5, 1, 0, 9)).toBe(Infinity);
    expect(credited(5, 1, 0, 9, TRIMIX)).toBe(Infinity);
  });

  it('runs down a minute a minute, and is not told beyond its cap', () => {
    const whole = credited(30, 2, 0, 9);
    expect(credited(30, 2, 3, 9)).toBeCloseTo(whole - 3, 8);
    expect(credited(12, 1, 0, 9)).toBe(Infinity);
    expect(credited(12, 1, 60, 9)).toBeLessThan(99);
  });

  it('is looked for at whole minutes since the diver came to this depth', () => {
    const dive = diveOf([down(30, 120), stay(3600)], { gradientFactors: FACTORS });
    const timeline = computeTimeline(dive, 30);
    const start = ascentStartAt(timeline, figuresOf(timeline, dive.settings), 9);
    expect(start.stayedMin).toBe(2.5);
    const planAscent = ascentPlanner(dive.settings, timeline);
    const looked: (number | undefined)[] = [];
    creditedNoStopMin(dive.settings, timeline, start, (from, ...under) => {
      looked.push(from.stayedMin);
      return planAscent(from, ...under);
    });
    // After now, and what is asked of the fullest there can be.
    const [, , ...ahead] = looked.filter((stayed) => stayed! % 1 === 0 || stayed === 2.5);
    expect(ahead.slice(0, 3).map((stayed) => stayed! % 1)).toEqual([0, 0, 0]);
  });

  it('is the same of a start that does not say how long it has been there', () => {
    const dive = diveOf([down(30, 120), stay(3600)], { gradientFactors: FACTORS });
    const timeline = computeTimeline(dive, 60);
    const { stayedMin, ...start } = ascentStartAt(timeline, figuresOf(timeline, dive.settings), 4);
    expect(stayedMin).toBe(2);
    expect(creditedNoStopMin(dive.settings, timeline, start)).toBeCloseTo(credited(30, 2, 2, 9), 8);
  });
});

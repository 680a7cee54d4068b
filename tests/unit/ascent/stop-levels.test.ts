import { describe, expect, it } from 'vitest';
import { levelAbove, levelM, stopAtOrBelow } from '@/lib/ascent/stop-levels';

const depths = (plan: { stopStepM: number; lastStopM: number }) => [0, 1, 2, 3, 4].map((level) => levelM(level, plan));
const above = (depthM: number, plan: { stopStepM: number; lastStopM: number }) =>
  levelM(levelAbove(depthM, plan), plan);
const below = (depthM: number, plan: { stopStepM: number; lastStopM: number }) =>
  levelM(stopAtOrBelow(depthM, plan), plan);

describe('the depths a climb may halt at', () => {
  it('are the surface, the last stop and every step deeper', () => {
    expect(depths({ stopStepM: 3, lastStopM: 3 })).toEqual([0, 3, 6, 9, 12]);
    expect(depths({ stopStepM: 3, lastStopM: 6 })).toEqual([0, 6, 9, 12, 15]);
    expect(depths({ stopStepM: 3, lastStopM: 5 })).toEqual([0, 5, 6, 9, 12]);
    expect(depths({ stopStepM: 10, lastStopM: 3 })).toEqual([0, 3, 10, 20, 30]);
  });

  it.each([
    [2, 0, 3],
    [3, 0, 3],
    [3.1, 3, 6],
    [6, 3, 6],
    [6 + 1e-12, 3, 6],
    [29, 27, 30],
  ])('from %f m are %i m next above and %i m at or below', (depthM, up, down) => {
    const plan = { stopStepM: 3, lastStopM: 3 };
    expect(above(depthM, plan)).toBe(up);
    expect(below(depthM, plan)).toBe(down);
  });

  it('lie in steps of ten feet too', () => {
    const plan = { stopStepM: 3.048, lastStopM: 6.096 };
    expect(above(9.144, plan)).toBe(6.096);
    expect(below(9.144, plan)).toBeCloseTo(9.144, 12);
    expect(above(7, plan)).toBe(6.096);
  });
});

import { describe, expect, it } from 'vitest';
import { stopChanges } from '@/lib/ascent/stop-changes';
import { parseScript } from '@/lib/dive/script';
import { sceneOf } from '@/app/pictures/scene';
import { levelAbove, levelM, stopAtOrBelow } from '@/lib/ascent/plan/stop-levels';

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

describe('a ceiling a hair under a stop', () => {
  const plan = { stopStepM: 3, lastStopM: 3 };

  it('is at that stop within the allowance for sums, in metres, and asks for the one below past it', () => {
    expect(levelM(stopAtOrBelow(9 + 0.5e-9, plan), plan)).toBe(9);
    expect(levelM(stopAtOrBelow(9 + 2.4e-9, plan), plan)).toBe(12);
  });

  it('lets the way up of whoever passes their ceiling while they wait be worked out to its end', () => {
    // The ceiling falls through the depth of the diver at 28:43 and is looked for there ever more closely.
    const parsed = parseScript(`gas: air
gradient factors: 35/80

descend to 33 m at 18 m/min
stay 24 min
ascend to 9 m at 9 m/min
stay 2 min
ascend to 3 m at 9 m/min
stay 14 min
ascend to surface at 9 m/min
`);
    if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
    const { timeline, figures } = sceneOf(parsed.dive);
    expect(stopChanges(timeline, figures).some(({ timeS }) => timeS > 1723 && timeS < 1724)).toBe(true);
  });
});

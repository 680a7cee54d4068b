import { describe, expect, it } from 'vitest';
import { figuresAt } from '@/lib/ascent/figures';
import type { Settings } from '@/lib/dive/dive';
import { sampleAt } from '@/lib/dive/timeline';
import { workingFor } from '@/lib/working/all';
import type { Working } from '@/lib/working/working';
import { downFor, SETTINGS, TRIMIX, workedDive, type Worked } from '../dives';

function stopAt({ timeline, figures }: Worked, timeS: number) {
  const sample = sampleAt(timeline, timeS);
  return {
    working: workingFor('required-stop', timeline, figures, sample),
    schedule: figuresAt(timeline, figures, sample).schedule,
  };
}

const step = (working: Working, id: string) => working.steps.find((one) => one.id === `step:${id}`);
const last = (working: Working) => working.steps.at(-1)!;

describe('the working behind a required stop', () => {
  it.each<[string, Partial<Settings>]>([
    ['one gradient factor', {}],
    ['a line from low to high', { gradientFactors: { low: 0.3, high: 0.8 } }],
    ['trimix and a switch on the way', { gas: TRIMIX, carried: [{ gas: { o2: 0.5, he: 0 }, fromM: 21 }] }],
    ['stops of half minutes', { plan: { ...SETTINGS.plan, stopRoundingMin: 0.5 } }],
  ])('waits as long as the schedule, until the climb to the next level is just tolerated: %s', (_, settings) => {
    const { working, schedule } = stopAt(workedDive(downFor(45, 25), settings), 1600);
    const first = schedule.stops[0]!;
    const rounding = settings.plan?.stopRoundingMin ?? 1;
    expect(working.answer).toMatchObject({ value: first.minutes, unit: 'min', at: { value: first.depthM, unit: 'm' } });
    const exact = last(working).values['t']!.value;
    expect(exact).toBeLessThanOrEqual(first.minutes);
    expect(exact).toBeGreaterThan(first.minutes - rounding);
    expect(step(working, 'room')!.result.value).toBeCloseTo(0, 9);
  });

  it('shows for all sixteen how long each alone would have you wait, the marked one longest', () => {
    const { working } = stopAt(workedDive(downFor(45, 25)), 1600);
    const waits = working.table!.rows.map((row) => row.at(-1) as number);
    expect(Math.max(...waits)).toBeCloseTo(last(working).values['t']!.value, 6);
    expect(waits.indexOf(Math.max(...waits))).toBe(working.table!.marked);
  });

  it('tells of the next level that is left out between the last stop and the surface', () => {
    const { working } = stopAt(workedDive(downFor(30, 40), { plan: { ...SETTINGS.plan, lastStopM: 6 } }), 2400);
    expect(working.answer.at).toEqual({ value: 6, unit: 'm' });
    expect(step(working, 'next-ambient')!.values['d_next']!.value).toBe(0);
  });

  it('is none on a direct ascent that keeps every limit, and shows the room at the surface', () => {
    const { working } = stopAt(workedDive(downFor(18, 20)), 900);
    expect(working.answer).toMatchObject({ value: 0 });
    expect(working.answer.at).toBeUndefined();
    expect(step(working, 'room')!.result.value).toBeGreaterThan(0);
    expect(working.search).toBeUndefined();
  });

  it('is none at the surface before the dive', () => {
    expect(stopAt(workedDive(downFor(18, 20)), 0).working.answer.value).toBe(0);
  });

  it('never ends where the gas breathed at the stop holds the limit broken', () => {
    // Breathing 79% helium at a last stop of 10 m under a gradient factor of 0.1: saturation there is past the limit.
    const settings = {
      gas: { o2: 0.21, he: 0.79 },
      gradientFactors: { low: 0.1, high: 0.1 },
      plan: { ...SETTINGS.plan, stopStepM: 10, lastStopM: 10 },
    };
    const { working, schedule } = stopAt(workedDive(downFor(10, 600), settings, 60), 30_000);
    expect(schedule.timeToSurfaceMin).toBe(Infinity);
    expect(working.answer).toMatchObject({ value: Infinity, at: { value: 10, unit: 'm' } });
    expect(step(working, 'room')!.result.value).toBeLessThan(0);
  });

  it('leads back down to a stop from above the ceiling', () => {
    const steps = [
      ...downFor(45, 25),
      { kind: 'ascend' as const, toM: 1, durationS: 60 },
      { kind: 'stay' as const, durationS: 60 },
    ];
    const dive = workedDive(steps);
    const { working } = stopAt(dive, 135 + 1500 + 60 + 30);
    const down = step(working, 'rate-N2-to1')!;
    expect(down.result.value).toBeGreaterThan(0);
    // Back down at the stop the climb may be open at once: it is listed all the same, and need not be held.
    expect(working.answer.value).toBe(
      figuresAt(dive.timeline, dive.figures, sampleAt(dive.timeline, 1725)).schedule.stops[0]!.minutes,
    );
  });
});

describe('the working behind the time to surface', () => {
  it('adds the climbing and every stop', () => {
    const { timeline, figures } = workedDive(downFor(45, 25));
    const sample = sampleAt(timeline, 1600);
    const { schedule } = figuresAt(timeline, figures, sample);
    const working = workingFor('time-to-surface', timeline, figures, sample);
    expect(step(working, 'climb')!.result.value).toBeCloseTo(45 / 9, 12);
    expect(Object.values(step(working, 'stops')!.values).map(({ value, at }) => [at?.value, value])).toEqual(
      schedule.stops.map(({ depthM, minutes }) => [depthM, minutes]),
    );
    expect(working.answer.value).toBeCloseTo(5 + schedule.stops.reduce((sum, { minutes }) => sum + minutes, 0), 9);
  });

  it('adds many stops some at a time', () => {
    const { timeline, figures } = workedDive(downFor(90, 40), { gas: TRIMIX });
    const working = workingFor('time-to-surface', timeline, figures, sampleAt(timeline, 2600));
    expect(step(working, 'stops-10')).toBeDefined();
    expect(last(working).result.value).toBe(working.answer.value);
  });

  it('is the climbing alone without a stop', () => {
    const { timeline, figures } = workedDive(downFor(18, 10));
    const working = workingFor('time-to-surface', timeline, figures, sampleAt(timeline, 300));
    expect(working.answer.value).toBeCloseTo(2, 12);
    expect(step(working, 'stops')).toBeUndefined();
  });
});

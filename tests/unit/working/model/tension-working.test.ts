import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import type { Step } from '@/lib/dive/dive';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { REMARKS } from '@/lib/working/remarks';
import { workingFor } from '@/lib/working/all';
import { LEGS_SHOWN } from '@/lib/working/steps/tension-steps';
import type { Working } from '@/lib/working/working';
import { downFor, SETTINGS, workedDive } from '../dives';

const ids = (working: Working) => working.steps.map(({ id }) => id);
const step = (working: Working, id: string) => working.steps.find((one) => one.id === `step:${id}`);

describe('the working behind a tension', () => {
  const steps: Step[] = [
    ...downFor(30, 20),
    { kind: 'ascend', toM: 0, durationS: 200 },
    { kind: 'interval', durationS: 3600 },
    ...downFor(18, 30),
  ];
  const { timeline, figures } = workedDive(steps);

  it('goes from the start through each leg to now', () => {
    const working = workingFor('tension-5', timeline, figures, timeline.length - 1);
    expect(working.table?.rows.map((row) => row[0])).toEqual([
      'leg 1, going down',
      'leg 2, staying',
      'leg 3, coming up',
      'leg 4, at the surface',
      'leg 5, going down',
      'leg 6, staying',
    ]);
    expect(working.table?.rows.at(-1)?.at(-1)).toBe(working.answer.value);
    expect(step(working, 'tension-N2-1')!.expression).toContain('1 / k_N2');
    expect(step(working, 'tension-N2-2')!.expression).not.toContain('1 / k_N2');
    expect(working.cautions).toBeUndefined();
  });

  it('stops at now in the middle of a leg', () => {
    const working = workingFor('tension-5', timeline, figures, sampleAt(timeline, 690));
    expect(working.table?.rows.at(-1)?.slice(2, 5)).toEqual([30, 30, 10]);
  });

  it('is the start alone before anything has happened', () => {
    const working = workingFor('tension-16', timeline, figures, 0);
    expect(ids(working)).toEqual(['step:k-N2', 'step:settled', 'step:inert']);
    expect(working.answer.value).toBeCloseTo((1.01325 - 0.0627) * 0.79, 12);
  });

  it('takes over the tensions an earlier dive left', () => {
    const start = {
      kind: 'tensions' as const,
      nitrogenBar: Array<number>(16).fill(1.2),
      heliumBar: Array<number>(16).fill(0.3),
    };
    const left = workedDive(downFor(20, 10), { start });
    const working = workingFor('tension-3', left.timeline, left.figures, 0);
    expect(working.answer.value).toBeCloseTo(1.5, 12);
    expect(step(working, 'inert')!.values['P_He']).toMatchObject({ value: 0.3, from: 'setting' });
  });

  it('counts the time since arriving at altitude', () => {
    const start = { kind: 'arrived' as const, fromM: 0, agoS: 7200 };
    const arrived = workedDive(downFor(20, 10), { altitudeM: 2500, start });
    const working = workingFor('tension-8', arrived.timeline, arrived.figures, 0);
    expect(step(working, 'arrived')!.values['t_ago']!.value).toBe(120);
    expect(step(working, 'arrived')!.values['P_N2_home']!.value).toBeGreaterThan(working.answer.value);
  });

  it('works only the latest legs of a long dive through, and says so', () => {
    const sawtooth = Array.from({ length: 20 }, (_, i): Step[] => [
      { kind: 'descend', toM: 20 + i, durationS: 60 },
      { kind: 'ascend', toM: 10, durationS: 60 },
    ]).flat();
    const long = workedDive(sawtooth);
    const working = workingFor('tension-2', long.timeline, long.figures, long.timeline.length - 1);
    expect(working.table?.rows).toHaveLength(LEGS_SHOWN);
    expect(working.cautions).toEqual([REMARKS.earlierLegs]);
    expect(step(working, 'tension-N2-29')!.values['P_N2_0']).toMatchObject({ from: 'dive' });
  });

  it('begins anew where an instrument lost its memory', () => {
    const dive = { settings: SETTINGS, steps, lines: [] };
    const swapped = computeTimeline(dive, 10, { freshAtLegs: [4] });
    const working = workingFor('tension-5', swapped, figuresOf(swapped, SETTINGS), swapped.length - 1);
    expect(working.table?.rows.map((row) => row[0])).toEqual(['leg 5, going down', 'leg 6, staying']);
    expect(step(working, 'settled')).toBeDefined();
  });

  it('takes half-times that are not the published ones as a setting', () => {
    const compartments = {
      ...timeline.compartments,
      nitrogenHalfTimeMin: timeline.compartments.nitrogenHalfTimeMin.map((t) => 2 * t),
      nitrogenK: timeline.compartments.nitrogenK.map((k) => k / 2),
    };
    const slow = computeTimeline({ settings: SETTINGS, steps, lines: [] }, 10, { compartments });
    const working = workingFor('tension-1', slow, figuresOf(slow, SETTINGS), 50);
    expect(step(working, 'k-N2')!.values['t_half_N2']).toMatchObject({ value: 10, from: 'setting' });
  });

  it.each(['tension-0', 'tension-17'] as const)('knows no %s', (reading) => {
    expect(() => workingFor(reading, timeline, figures, 0)).toThrow(RangeError);
  });
});

import { describe, expect, it } from 'vitest';
import { sampleAt } from '@/lib/dive/timeline';
import type { Step } from '@/lib/dive/dive';
import { workingFor } from '@/lib/working/all';
import type { Working } from '@/lib/working/working';
import { downFor, TRIMIX, workedDive, type Worked } from '../dives';

const LINE = { gradientFactors: { low: 0.3, high: 0.85 } };

function ceilingAt({ timeline, figures }: Worked, timeS: number): Working {
  return workingFor('ceiling', timeline, figures, sampleAt(timeline, timeS));
}

const step = (working: Working, id: string) => working.steps.find((one) => one.id === `step:${id}`);
const result = (working: Working, id: string) => step(working, id)?.result.value;

describe('the working behind a ceiling', () => {
  it('solves the limit for the pressure tolerated, under one gradient factor', () => {
    const working = ceilingAt(workedDive(downFor(40, 25)), 1500);
    const { P_N2: tension, a, b, gf } = step(working, 'tolerated')!.values;
    // Baker's gradient factor put into M = a + p/b: at the pressure tolerated the limit is what the compartment holds.
    const p = result(working, 'tolerated')!;
    expect(p + gf!.value * (a!.value + p / b!.value - p)).toBeCloseTo(tension!.value, 12);
    expect(working.answer.value).toBeCloseTo((p - 1.01325) / 0.1, 9);
    expect(working.answer.value).toBeGreaterThan(3);
  });

  it('is nothing where the pressure tolerated is below the surface’s, and names the nearest compartment', () => {
    const working = ceilingAt(workedDive(downFor(20, 5)), 200);
    expect(working.answer.value).toBe(0);
    expect(result(working, 'tolerated')).toBeLessThan(1.01325);
    const tolerated = working.table!.rows.map((row) => row.at(-2) as number);
    expect(working.compartment).toBe(tolerated.indexOf(Math.max(...tolerated)) + 1);
  });

  it('on a line from low to high, solves the quadratic and checks the limit at its root', () => {
    const working = ceilingAt(workedDive(downFor(40, 25), LINE), 1500);
    expect(working.answer.value).toBeGreaterThan(3);
    expect(result(working, 'ceiling-check')).toBeCloseTo(0, 12);
    const anchor = result(working, 'anchor')!;
    // While the anchor still sinks, the ceiling is the anchor itself.
    expect(anchor).toBeCloseTo(working.answer.value, 9);
    expect(result(working, 'ceiling-gf')).toBeCloseTo(0.85 - (0.55 * working.answer.value) / anchor, 12);
  });

  it('begins the line at the ceiling under low, not rounded to a stop', () => {
    const dive = workedDive(downFor(40, 25), LINE);
    const working = ceilingAt(dive, 1500);
    expect(result(working, 'anchor')).toBeCloseTo(dive.figures.ceilingAtLowM[sampleAt(dive.timeline, 1500)]!, 9);
    expect(step(working, 'slope')!.why).toContain('Baker’s papers round its foot deeper, to a stop; here it is not');
  });

  it('takes the anchor as it was reached once the ascent is under way', () => {
    const steps: Step[] = [
      ...downFor(40, 25),
      { kind: 'ascend', toM: 12, durationS: 180 },
      { kind: 'stay', durationS: 300 },
    ];
    const working = ceilingAt(workedDive(steps, LINE), 120 + 1500 + 180 + 299);
    expect(step(working, 'anchor')).toBeUndefined();
    expect(step(working, 'slope')!.values['d_anchor']).toMatchObject({ from: 'dive', unit: 'm' });
  });

  it('weighs a and b by what the compartment holds of each gas', () => {
    const working = ceilingAt(workedDive(downFor(50, 25), { gas: TRIMIX }), 1500);
    const { a_N2: ofNitrogen, a_He: ofHelium, P_N2: nitrogen, P_He: helium } = step(working, 'a')!.values;
    const share = helium!.value / (nitrogen!.value + helium!.value);
    expect(result(working, 'a')).toBeCloseTo(ofNitrogen!.value * (1 - share) + ofHelium!.value * share, 12);
  });
});

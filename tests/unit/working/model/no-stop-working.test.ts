import { describe, expect, it } from 'vitest';
import { sampleAt } from '@/lib/dive/timeline';
import { workingFor } from '@/lib/working/all';
import type { Working } from '@/lib/working/working';
import { downFor, SETTINGS, TRIMIX, workedDive, type Worked } from '../dives';

function noStopAt({ timeline, figures }: Worked, timeS: number): Working {
  return workingFor('no-stop', timeline, figures, sampleAt(timeline, timeS));
}

const result = (working: Working, id: string) => working.steps.find((step) => step.id === `step:${id}`)?.result.value;

describe('the working behind a no-stop time', () => {
  // 30 m on air, straight after a descent of 90 s, at sea level. The arithmetic is written out from the published
  // half-time, a and b of compartment 1b (5 min, 1.1696 bar, 0.5578) by Schreiner's and Haldane's equations.
  const arrival = noStopAt(workedDive(downFor(30, 20)), 90);

  it('goes from the depth to the pressure around, the lungs, the tension, the limit and the time', () => {
    expect(arrival.steps.filter(({ group }) => group === undefined).map(({ id }) => id)).toEqual([
      'step:ambient',
      'step:breathed-N2',
      'step:k-N2',
      'step:surface-limit',
      'step:no-stop',
    ]);
    expect(result(arrival, 'ambient')).toBeCloseTo(1.01325 + 3, 12);
    expect(result(arrival, 'breathed-N2')).toBeCloseTo((4.01325 - 0.0627) * 0.79, 12);
  });

  it('comes to what the published figures give by hand', () => {
    const compartment = arrival.compartment!;
    const halfTime = arrival.steps.find(({ id }) => id === 'step:k-N2')!.values['t_half_N2']!.value;
    const { a, b } = arrival.steps.find(({ id }) => id === 'step:surface-limit')!.values;
    expect([compartment, halfTime, a!.value, b!.value]).toEqual([1, 5, 1.1696, 0.5578]);
    const k = Math.LN2 / 5;
    const lungs = (4.01325 - 0.0627) * 0.79;
    const settled = (1.01325 - 0.0627) * 0.79;
    const rate = 2 * 0.79;
    const tension = settled + rate * (1.5 - 1 / k) + (rate / k) * Math.exp(-k * 1.5);
    const limit = 1.01325 + 0.85 * (1.1696 + 1.01325 / 0.5578 - 1.01325);
    expect(result(arrival, 'surface-limit')).toBeCloseTo(limit, 12);
    expect(arrival.answer.value).toBeCloseTo(Math.log((lungs - tension) / (lungs - limit)) / k, 9);
  });

  it('says how each published value was come by', () => {
    const { t_half_N2: halfTime } = arrival.steps.find(({ id }) => id === 'step:k-N2')!.values;
    expect(halfTime).toMatchObject({ from: 'published', obtained: 'read', changeable: true });
  });

  it('sets all sixteen side by side and marks the one that ends the time', () => {
    const { table } = arrival;
    expect(table?.rows).toHaveLength(16);
    expect(table?.marked).toBe(arrival.compartment! - 1);
    expect(table?.rows[0]?.[0]).toBe('1b');
    const minutes = table!.rows.map((row) => row.at(-1) as number);
    expect(Math.min(...minutes)).toBeCloseTo(arrival.answer.value, 9);
    expect(minutes.filter((own) => own === arrival.answer.value)).toHaveLength(1);
  });

  it('is without end at 5 m on air, where what is breathed stays below every limit', () => {
    const working = noStopAt(workedDive(downFor(5, 20)), 600);
    expect(working.answer.value).toBe(Infinity);
    expect(working.compartment).toBe(16);
    expect(working.table!.rows.map((row) => row.at(-1))).toEqual(Array(16).fill(Infinity));
    expect(result(working, 'breathed-N2')).toBeLessThan(result(working, 'surface-limit')!);
  });

  it('is nothing once a stop is needed, because the compartment holds more than its limit', () => {
    const working = noStopAt(workedDive(downFor(40, 30)), 1800);
    expect(working.answer.value).toBe(0);
    expect(result(working, `tension-N2-2`)).toBeGreaterThan(result(working, 'surface-limit')!);
    expect(working.answer.text).toContain('stop');
  });

  it('with helium, finds the time at which tension and limit meet', () => {
    const working = noStopAt(workedDive(downFor(40, 20), { gas: TRIMIX }), 120);
    expect(working.answer.value).toBeGreaterThan(1);
    expect(working.search).toEqual({ symbol: 't', until: 'step:meeting', fromMin: 0, horizonMin: 100 });
    expect(result(working, 'meeting')).toBeCloseTo(0, 9);
    expect(result(working, 'later')).toBeCloseTo(result(working, 'surface-limit')!, 9);
    expect(working.cautions?.[0]).toContain('helium');
  });

  it('with helium, shows how far off the limit still is where it is not reached', () => {
    const working = noStopAt(workedDive(downFor(6, 20), { gas: TRIMIX }), 120);
    expect(working.answer.value).toBe(Infinity);
    expect(result(working, 'meeting')).toBeLessThan(0);
  });

  it('with helium, finds no time left once the limit is passed', () => {
    const working = noStopAt(workedDive(downFor(50, 30), { gas: TRIMIX }), 1500);
    expect(working.answer.value).toBe(0);
    expect(result(working, 'meeting')).toBeGreaterThan(0);
  });

  it('at altitude, begins with the atmosphere there and where the diver had settled', () => {
    const working = noStopAt(workedDive(downFor(20, 20), { altitudeM: 2000 }), 300);
    // 794.95 hPa at 2000 m: ISO 2533:1975, as in its table.
    expect(result(working, 'surface')).toBeCloseTo(0.79495, 4);
    expect(working.steps.find(({ id }) => id === 'step:settled')?.values['p_home']?.value).toBe(1.01325);
  });

  it('takes the respiratory quotient into the lungs where it is not 1', () => {
    const model = { ...SETTINGS.model, respiratoryQuotient: 0.8 };
    const working = noStopAt(workedDive(downFor(30, 20), { model }), 90);
    const step = working.steps.find(({ id }) => id === 'step:breathed-N2')!;
    expect(step.expression).toBe('(p_amb - p_H2O + (1 - RQ) / RQ * p_CO2) * F_N2');
    expect(step.result.value).toBeCloseTo((4.01325 - 0.0627 + 0.25 * 0.0534) * 0.79, 12);
  });
});

import { beforeAll, describe, expect, it } from 'vitest';
import { breathedAt } from '@/lib/ascent/breathed';
import { figuresOf, loadAt } from '@/lib/ascent/figures';
import { compartmentNoStopMin } from '@/lib/ascent/no-stop';
import { computeTimeline, gasAt, sampleAt } from '@/lib/dive/timeline';
import { workingFor } from '@/lib/working/all';
import { loadCalculator, type Calculator } from '@/lib/working/calculator';
import { REMARKS } from '@/lib/working/remarks';
import { carryThrough, changeableValues } from '@/lib/working/what-if/carry-through';
import type { Working } from '@/lib/working/working';
import { downFor, SETTINGS, TRIMIX, workedDive } from '../dives';
import { valueOf } from '../../read';

let calculator: Calculator;
beforeAll(async () => {
  calculator = await loadCalculator();
});

function changed(working: Working, changes: Record<string, number>): Working {
  return valueOf(carryThrough(calculator, working, changes));
}

describe('what would follow from another number', () => {
  it.each([
    ['air', SETTINGS.gas, 30, 't_half_N2'],
    ['trimix, nitrogen’s half-time', TRIMIX, 40, 't_half_N2'],
    ['trimix, helium’s half-time', TRIMIX, 40, 't_half_He'],
  ] as const)(
    'is what the engine says of a compartment with that half-time, from the start of the dive on: %s',
    (_, gas, toM, symbol) => {
      const steps = downFor(toM, 4);
      const { timeline, figures } = workedDive(steps, { gas });
      const sample = sampleAt(timeline, toM * 3 + 60);
      const working = workingFor('no-stop', timeline, figures, sample);
      const c = working.compartment! - 1;

      const compartments = { ...timeline.compartments };
      for (const name of symbol === 't_half_N2'
        ? (['nitrogenHalfTimeMin', 'nitrogenK'] as const)
        : (['heliumHalfTimeMin', 'heliumK'] as const)) {
        const own = timeline.compartments[name].slice();
        own[c] = name.endsWith('K') ? Math.LN2 / 8 : 8;
        compartments[name] = own;
      }
      const other = computeTimeline({ settings: { ...SETTINGS, gas }, steps, lines: [] }, 10, { compartments });
      const breathed = breathedAt(other, gasAt(other, sample), other.ambientBar[sample]!);
      const expected = compartmentNoStopMin(loadAt(other, sample), breathed, SETTINGS.gradientFactors.high, c);

      expect(changed(working, { [symbol]: 8 }).answer.value).toBeCloseTo(expected, 6);
      expect(expected).not.toBeCloseTo(working.answer.value, 1);
    },
  );

  it.each([0.8, 0.83])('follows a gradient factor of %d into a required stop as the engine does', (gf) => {
    const steps = downFor(30, 40);
    const plan = { ...SETTINGS.plan, stopStepM: 6, lastStopM: 6 };
    const { timeline, figures } = workedDive(steps, { plan });
    const sample = sampleAt(timeline, 2400);
    const working = workingFor('required-stop', timeline, figures, sample);
    const other = workedDive(steps, { plan, gradientFactors: { low: gf, high: gf } });
    const expected = workingFor('required-stop', other.timeline, other.figures, sample);
    expect(expected.answer.at).toEqual(working.answer.at);
    expect(expected.compartment).toBe(working.compartment);
    expect(changed(working, { gf }).answer.value).toBe(expected.answer.value);
    expect(expected.answer.value).not.toBe(working.answer.value);
  });

  it('leaves the working and the dive as they were', () => {
    const { timeline, figures } = workedDive(downFor(30, 10));
    const working = workingFor('no-stop', timeline, figures, 20);
    const before = JSON.stringify(working);
    changed(working, { t_half_N2: 8 });
    expect(JSON.stringify(working)).toBe(before);
    expect(workingFor('no-stop', timeline, figuresOf(timeline, SETTINGS), 20)).toEqual(working);
  });

  it('keeps the steps before the change, says that it is a what-if, and drops the table of the dive as it was', () => {
    const { timeline, figures } = workedDive(downFor(30, 10));
    const working = workingFor('no-stop', timeline, figures, 20);
    const carried = changed(working, { gf: 0.7 });
    expect(carried.steps.filter((step, index) => step !== working.steps[index]).map(({ id }) => id)).toEqual([
      'step:surface-limit',
      'step:no-stop',
    ]);
    expect(carried.answer.text).toBe(REMARKS.whatIf);
    expect(carried.table).toBeUndefined();
  });

  it('passes from a time to no end and to none left', () => {
    const { timeline, figures } = workedDive(downFor(30, 10));
    const working = workingFor('no-stop', timeline, figures, 20);
    expect(changed(working, { d: 1 }).answer.value).toBe(Infinity);
    expect(changed(working, { gf: 0.05 }).answer.value).toBe(0);
  });

  it('takes no other time in place of the one searched for', () => {
    const { timeline, figures } = workedDive(downFor(40, 20), { gas: TRIMIX });
    const working = workingFor('no-stop', timeline, figures, sampleAt(timeline, 120));
    expect(carryThrough(calculator, working, { t: working.answer.value + 1 })).toMatchObject({ ok: false });
  });

  it('says so where the formula has no answer', () => {
    const { timeline, figures } = workedDive(downFor(30, 10), {
      start: { kind: 'tensions', nitrogenBar: Array<number>(16).fill(0), heliumBar: Array<number>(16).fill(0.5) },
    });
    const working = workingFor('surfacing-supersaturation', timeline, figures, 0);
    const empty = changed(working, { P_He: 0 });
    expect(empty.answer.value).toBeNaN();
    expect(empty.answer.text).toBe(REMARKS.noAnswer);
  });

  it.each([
    ['t_half', 8, 'There is no t_half'],
    ['p_H2O', 0.05, 'p_H2O follows from the rest, or is a constant'],
    ['p_amb', 3, 'p_amb follows from the rest'],
    ['t_half_N2', 0, '0 makes no sense here'],
    ['t_half_N2', NaN, 'NaN makes no sense here'],
    ['F_N2', 1.2, '1.2 makes no sense here'],
    ['toString', 1, 'There is no toString'],
  ])('refuses %s as %d, with what is wrong', (symbol, number, what) => {
    const { timeline, figures } = workedDive(downFor(30, 10));
    const carried = carryThrough(calculator, workingFor('no-stop', timeline, figures, 20), { [symbol]: number });
    expect(carried).toMatchObject({ ok: false, what: expect.stringContaining(what), mend: expect.any(String) });
  });

  it('lists what may be changed, each once', () => {
    const { timeline, figures } = workedDive(downFor(30, 10));
    const symbols = [...changeableValues(workingFor('no-stop', timeline, figures, 20)).keys()];
    expect(symbols).toEqual(expect.arrayContaining(['d', 'F_N2', 't_half_N2', 'gf', 'a', 'b', 't_1']));
    // What a step yields, what the place sets and what is a constant are not.
    for (const symbol of ['P_N2', 'p_surface', 'w', 'p_H2O']) expect(symbols).not.toContain(symbol);
  });
});

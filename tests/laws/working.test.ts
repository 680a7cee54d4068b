import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { figuresAt } from '@/lib/ascent/figures';
import { gasAt } from '@/lib/dive/timeline';
import { gasDensityGL } from '@/lib/exposure/gas-density';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { READING_IDS, workingFor, type ReadingId } from '@/lib/working/all';
import { loadCalculator, type Calculator } from '@/lib/working/calculator';
import { stepTex } from '@/lib/working/formula';
import { changeableValues, carryThrough } from '@/lib/working/what-if/carry-through';
import type { Instant } from '@/lib/working/instant';
import type { Working } from '@/lib/working/working';
import { anyInstant } from '../unit/working/dives';
import { law } from './law';
import { faultsOfSources, faultsOfSteps, numbersOf, same } from './working-faults';
import { valueOf } from '../unit/read';

/** Rounding of a formula worked out in another order than the engine's, relative beyond 1. */
const ROUNDING = 1e-9;
/** The same through a whole chain, and through a search that ends at a billionth of a minute. */
const CHAIN_ROUNDING = 1e-6;

let calculator: Calculator;
beforeAll(async () => {
  calculator = await loadCalculator();
});

interface Asked extends Instant {
  readonly reading: ReadingId;
  readonly working: Working;
}

const isTension = (reading: ReadingId) => reading.startsWith('tension-');
/** The sixteen tensions are worked out alike: they are asked for less often than the rest. */
const anyReading = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...READING_IDS.filter((reading) => !isTension(reading))) },
  { weight: 1, arbitrary: fc.constantFrom(...READING_IDS.filter(isTension)) },
);

/** Some readings of one dive at one instant, each with its working. */
const asked = fc
  .record({ instant: anyInstant, readings: fc.uniqueArray(anyReading, { minLength: 3, maxLength: 6 }) })
  .map(({ instant, readings }) =>
    readings.map((reading): Asked => ({
      ...instant,
      reading,
      working: workingFor(reading, instant.timeline, instant.figures, instant.sample),
    })),
  );

function everyReading(draws: number, holds: (asked: Asked) => void): void {
  law(
    fc.property(asked, (all) => all.forEach(holds)),
    draws,
  );
}

/** The reading as the engine gives it, by another way than through the working. */
function engineReading({ reading, timeline, figures, sample }: Asked): number {
  const compartment = /^tension-(\d+)$/.exec(reading)?.[1];
  if (compartment !== undefined) {
    const at = sample * 16 + Number(compartment) - 1;
    return timeline.nitrogenBar[at]! + timeline.heliumBar[at]!;
  }
  const gas = gasAt(timeline, sample);
  const ambientBar = timeline.surfaceBar + timeline.depthM[sample]! * timeline.barPerMetre;
  const depthOf = (bar: number) => (bar - timeline.surfaceBar) / timeline.barPerMetre;
  switch (reading) {
    case 'oxygen-single':
      return oxygenExposureOf(timeline).singleFraction[sample]!;
    case 'oxygen-daily':
      return oxygenExposureOf(timeline).dailyFraction[sample]!;
    case 'oxygen-pulmonary':
      return oxygenExposureOf(timeline).pulmonaryUnits[sample]!;
    case 'gas-density':
      return gasDensityGL(gas, ambientBar);
    case 'oxygen-pressure':
      return ambientBar * gas.o2;
    case 'mod':
      return gas.o2 === 0 ? Infinity : depthOf(1.4 / gas.o2);
    case 'end':
      return depthOf(ambientBar * (1 - gas.he));
    case 'end-nitrogen':
      return depthOf((ambientBar * (1 - gas.o2 - gas.he)) / 0.79);
    default: {
      const now = figuresAt(timeline, figures, sample);
      if (reading === 'no-stop') return now.noStop.minutes;
      if (reading === 'credited-no-stop') return now.creditedNoStopMin;
      if (reading === 'ceiling') return now.ceiling.depthM;
      if (reading === 'supersaturation') return now.supersaturation.value;
      if (reading === 'surfacing-supersaturation') return now.surfacingSupersaturation.value;
      if (reading === 'time-to-surface') return now.schedule.timeToSurfaceMin;
      return now.schedule.stops[0]?.minutes ?? (now.schedule.timeToSurfaceMin === Infinity ? Infinity : 0);
    }
  }
}

describe('the working behind any reading of any dive', () => {
  it('gives, in each of its steps, what mathjs makes of the expression and the numbers', () => {
    everyReading(150, ({ working }) => {
      expect(faultsOfSteps(calculator, working, ROUNDING)).toEqual([]);
    });
  });

  it('ends in the reading', () => {
    everyReading(100, (one) => {
      const { working } = one;
      const expected = engineReading(one);
      expect(
        same(working.answer.value, expected, ROUNDING),
        `${working.reading}: ${working.answer.value} for ${expected}`,
      ).toBe(true);
      expect(working.steps.at(-1)!.result).toEqual({ value: working.answer.value, unit: working.answer.unit });
    });
  });

  it('takes every value from the dive, a setting, a publication, practice, a search or an earlier step, and means one thing by a symbol', () => {
    everyReading(150, ({ working }) => expect(faultsOfSources(working)).toEqual([]));
  });

  it('puts its compartment in the row it marks, and no other row beats it', () => {
    everyReading(150, ({ working }) => {
      const { table, compartment } = working;
      if (!table || compartment === undefined || table.rows.length !== 16 || working.reading.startsWith('tension'))
        return;
      expect(table.marked).toBe(compartment - 1);
      const last = table.rows.map((row) => row.at(-1) as number);
      const own = last[compartment - 1]!;
      const best = working.reading === 'no-stop' ? Math.min(...last) : Math.max(...last);
      expect(same(own, best, CHAIN_ROUNDING), `${working.reading}: ${own} against ${best}`).toBe(true);
    });
  });

  it('comes to the same again when a number is changed to itself', () => {
    everyReading(60, ({ working }) => {
      for (const [symbol, { value, from }] of changeableValues(working)) {
        if (from === 'search') continue;
        const carried = carryThrough(calculator, working, { [symbol]: value });
        expect(
          carried.ok && same(carried.value.answer.value, working.answer.value, CHAIN_ROUNDING),
          `${working.reading} ${symbol} = ${value}: ${carried.ok ? carried.value.answer.value : carried.what} for ${working.answer.value}`,
        ).toBe(true);
      }
    });
  });

  it('changes only what follows from a changed number', () => {
    const changing = fc.tuple(asked, fc.nat(), fc.double({ min: 0, max: 1, noNaN: true }));
    const holds = ({ working }: Asked, pick: number, part: number) => {
      const changeable = [...changeableValues(working)];
      const [symbol, value] = changeable[pick % Math.max(1, changeable.length)] ?? [];
      if (symbol === undefined || !value?.within) return;
      const [least, most] = value.within;
      const carried = valueOf(carryThrough(calculator, working, { [symbol]: least + (most - least) * part }));
      const moved = new Set<string>(
        working.search && symbol !== working.search.symbol ? [symbol, working.search.symbol] : [symbol],
      );
      carried.steps.forEach((step, index) => {
        const before = working.steps[index]!;
        const hangs = Object.entries(before.values).some(([name, { from }]) => moved.has(name) || moved.has(from));
        if (hangs) moved.add(before.id);
        else expect(step).toBe(before);
        const recomputed = calculator.evaluate(step.expression, numbersOf(step));
        expect(Object.is(recomputed, step.result.value) || same(recomputed, step.result.value, ROUNDING)).toBe(true);
      });
      expect(moved.has(carried.steps.at(-1)!.id) || carried.answer.value === working.answer.value).toBe(true);
    };
    law(
      fc.property(changing, ([all, pick, part]) => all.forEach((one) => holds(one, pick, part))),
      80,
    );
  });

  it('can be written out, with symbols and with numbers', () => {
    everyReading(40, ({ working }) => {
      for (const step of working.steps) {
        for (const withNumbers of [false, true])
          expect(stepTex(calculator, step, { withNumbers }).join(' ')).not.toMatch(/NaN|undefined|step:/);
      }
    });
  });
});

import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Dive } from '@/lib/dive/dive';
import { setupSchema } from '@/lib/dive/setup';
import { sampleAt } from '@/lib/dive/timeline';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { shownAt } from '@/lib/rules/unit/shown';
import { figuresInForce, watchDive, type Watch } from '@/lib/rules/watch';
import { loadCalculator, type Calculator } from '@/lib/working/calculator';
import { stepTex } from '@/lib/working/formula';
import { RULE_READING_IDS, unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import { carryThrough, changeableValues } from '@/lib/working/what-if/carry-through';
import type { Working } from '@/lib/working/working';
import { SETTINGS, TRIMIX } from '../unit/working/dives';
import { law } from './law';
import { throughLevels } from './through-levels';
import { faultsOfSources, faultsOfSteps, same } from './working-faults';

/** Rounding of a formula worked out in another order, relative beyond 1; and of a wait the unit finds by halving. */
const ROUNDING = 1e-9;
const SEARCHED = 1e-6;
let calculator: Calculator;
beforeAll(async () => {
  calculator = await loadCalculator();
});

/** Days of dives that rise too fast, linger about the safety stop's band and overstay, on air or trimix. */
const days: fc.Arbitrary<Dive> = fc
  .record({
    dives: fc.array(
      fc.array(
        fc.record({
          toM: fc.oneof(
            { weight: 1, arbitrary: fc.integer({ min: 1, max: 45 }) },
            { weight: 2, arbitrary: fc.constantFrom(5, 4, 2, 7, 6, 12) },
          ),
          rateMMin: fc.integer({ min: 5, max: 40 }),
          staysS: fc.integer({ min: 0, max: 200 }),
        }),
        { minLength: 2, maxLength: 14 },
      ),
      { minLength: 1, maxLength: 3 },
    ),
    homeMMin: fc.integer({ min: 4, max: 40 }),
    restS: fc.integer({ min: 30, max: 4 * 3600 }),
    gas: fc.constantFrom(SETTINGS.gas, SETTINGS.gas, { o2: 0.32, he: 0 }, TRIMIX),
    altitudeM: fc.constantFrom(0, 0, 1500),
  })
  .map(({ dives, homeMMin, restS, gas, altitudeM }): Dive => {
    const steps = dives.flatMap((levels) => throughLevels(levels, homeMMin, restS));
    return { settings: { ...SETTINGS, gas, altitudeM, start: { kind: 'adapted', altitudeM } }, steps, lines: [] };
  });

const rules = fc
  .record({
    safetyStop: fc.record({
      outside: fc.constantFrom('pauses' as const, 'extends' as const),
      lastsS: fc.constantFrom(180, 300),
    }),
    longerSafetyStop: fc.record({ on: fc.boolean(), mostS: fc.constantFrom(600, 90) }),
    imposedStop: fc.record({ on: fc.boolean(), mostS: fc.constantFrom(900, 150) }),
    tighterLimits: fc.record({ on: fc.boolean() }),
    flyingWait: fc.record({ cabinM: fc.constantFrom(2438.4, 300, 1200, 4000) }),
  })
  .map((own) => ruleSettingsSchema.parse(own));

const setups = fc.constantFrom(
  {},
  {},
  { depthScale: 1.03 },
  { depthOffsetM: -1.5 },
  { gas: { o2: 0.32, he: 0 } },
  { altitudeM: 2000 },
  { freshBeforeDives: [2] },
);

interface Asked {
  readonly watch: Watch;
  readonly sample: number;
  readonly reading: UnitReadingId;
  readonly working: Working;
}

const asked = fc
  .record({
    dive: days,
    rules,
    setup: setups,
    everyS: fc.constantFrom(1, 5),
    parts: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 }),
  })
  .map(({ dive, rules: own, setup, everyS, parts }): Asked[] => {
    const watch = watchDive(dive, setupSchema.parse({ name: 'Any unit', ...setup }), own, everyS, {
      intervalEveryS: 30,
    });
    const { timeline } = watch;
    const anywhere = parts.slice(0, 2).map((part) => sampleAt(timeline, part * timeline.timeS.at(-1)!));
    const whileStopping = [
      ...pick(watch.tracks.safetyStopLeftS, parts.slice(2, 4)),
      ...pick(watch.tracks.imposedStopLeftS, parts.slice(4)),
    ];
    const samples = [...anywhere, ...whileStopping, timeline.length - 1];
    return samples.flatMap((sample) =>
      [...RULE_READING_IDS, 'no-stop' as const, 'time-to-surface' as const].flatMap((reading) => {
        const working = unitWorkingFor(reading, { watch, sample });
        return working ? [{ watch, sample, reading, working }] : [];
      }),
    );
  });

/** Some of the samples at which there is something left of a stop. */
function pick(leftS: Float64Array, parts: readonly number[]): number[] {
  const left = [...leftS.keys()].filter((sample) => leftS[sample]! > 0);
  return left.length === 0 ? [] : parts.map((part) => left[Math.round(part * (left.length - 1))]!);
}

/** What the unit shows, by another way than through the working. */
function shownReading({ watch, sample, reading }: Asked): number {
  const shown = shownAt(watch, sample);
  const figures = figuresInForce(watch, sample);
  const readings: Partial<Record<UnitReadingId, number | null | undefined>> = {
    rate: shown.rateMMin,
    'safety-stop': shown.safetyStop?.leftS,
    'imposed-stop': shown.imposedStop && shown.imposedStop.minutes * 60,
    'tightened-limits': shown.tightenedHigh,
    'no-fly': shown.noFlyH,
    desaturation: shown.desaturationH,
    'no-stop': figures.noStopMin[sample]!,
    'time-to-surface': shown.timeToSurfaceMin,
  };
  return readings[reading]!;
}

const told = new Map<string, number>();
function everyReading(draws: number, holds: (asked: Asked) => void): void {
  law(
    fc.property(asked, (all) =>
      all.forEach((one) => {
        told.set(one.reading, (told.get(one.reading) ?? 0) + 1);
        holds(one);
      }),
    ),
    draws,
  );
}

describe('the working behind anything a unit shows', () => {
  it('gives, in each step, what mathjs makes of the expression and the numbers, and ends in what is shown', () => {
    everyReading(120, (one) => {
      const { working } = one;
      expect(faultsOfSteps(calculator, working, ROUNDING)).toEqual([]);
      const expected = shownReading(one);
      expect(
        same(working.answer.value, expected, SEARCHED),
        `${working.reading}: ${working.answer.value} for ${expected}`,
      ).toBe(true);
      expect(working.steps.at(-1)!.result).toEqual({ value: working.answer.value, unit: working.answer.unit });
    });
    // In the forty draws of an ordinary run the rarest was asked 19 to 29 times.
    for (const reading of RULE_READING_IDS)
      expect(told.get(reading) ?? 0, `how often ${reading} was asked`).toBeGreaterThan(5);
  });

  it('takes each value from somewhere, an earlier step where it says so, and means one thing by a symbol', () => {
    everyReading(60, ({ working }) => expect(faultsOfSources(working)).toEqual([]));
  });

  it('comes to the same again when a number is changed to itself', () => {
    everyReading(20, ({ working }) => {
      for (const [symbol, { value, from }] of [...changeableValues(working)].slice(0, 12)) {
        if (from === 'search') continue;
        const carried = carryThrough(calculator, working, { [symbol]: value });
        expect(
          carried.ok && same(carried.value.answer.value, working.answer.value, SEARCHED),
          `${working.reading} ${symbol} = ${value}`,
        ).toBe(true);
      }
    });
  });

  it('can be written out', () => {
    everyReading(10, ({ working }) => {
      for (const step of working.steps) {
        for (const withNumbers of [false, true])
          expect(stepTex(calculator, step, { withNumbers }).join(' ')).not.toMatch(/NaN|undefined|step:/);
      }
    });
  });
});

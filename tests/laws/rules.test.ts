import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { DEFAULT_RULES, RULES, type RuleSettings } from '@/lib/rules/all';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { EDGE_M } from '@/lib/rules/safety-stop';
import { shownAt } from '@/lib/rules/unit/shown';
import { watchDive, type Watch } from '@/lib/rules/watch';
import { diveOf, setupOf } from '../unit/rules/made-dives';
import { law } from './law';
import { throughLevels } from './through-levels';

const DRAWS = 60;

interface Level {
  readonly toM: number;
  readonly rateMMin: number;
  readonly staysS: number;
}

const levels: fc.Arbitrary<Level[]> = fc.array(
  fc.record({
    toM: fc.oneof(fc.integer({ min: 1, max: 45 }), fc.constant(5)),
    rateMMin: fc.integer({ min: 4, max: 40 }),
    staysS: fc.integer({ min: 0, max: 900 }),
  }),
  { minLength: 1, maxLength: 5 },
);

/** A short dive that ends with some minutes at 5 m: most have a safety stop to clear there. */
const withSafetyStop: fc.Arbitrary<Level[]> = fc
  .record({
    toM: fc.integer({ min: 12, max: 25 }),
    staysS: fc.integer({ min: 0, max: 600 }),
    stopS: fc.integer({ min: 120, max: 480 }),
  })
  .map(({ toM, staysS, stopS }) => [
    { toM, rateMMin: 18, staysS },
    { toM: 5, rateMMin: 8, staysS: stopS },
  ]);

/** A day that begins with a rise faster than any limit: something to punish. */
const tooFast: fc.Arbitrary<Level[]> = levels.map((some) => [
  { toM: 30, rateMMin: 30, staysS: 300 },
  { toM: 8, rateMMin: 40, staysS: 60 },
  ...some,
]);

/** Days of one to three dives, such as the one given; most go up and down at any speed a diver could manage. */
const daysOf = (oneDive: fc.Arbitrary<Level[]>): fc.Arbitrary<Dive> =>
  fc
    .record({
      dives: fc.array(oneDive, { minLength: 1, maxLength: 3 }),
      homeMMin: fc.integer({ min: 4, max: 40 }),
      restS: fc.integer({ min: 300, max: 4 * 3600 }),
      low: fc.integer({ min: 30, max: 90 }),
      more: fc.integer({ min: 0, max: 30 }),
    })
    .map(({ dives, homeMMin, restS, low, more }) => {
      const steps = dives.flatMap((levels) => throughLevels(levels, homeMMin, restS));
      return diveOf(steps, { gradientFactors: { low: low / 100, high: Math.min(1, (low + more) / 100) } });
    });
const days = daysOf(levels);

/** Every rule on or off by chance. */
const switches: fc.Arbitrary<Record<string, boolean>> = fc.record(
  Object.fromEntries(RULES.map(({ id }) => [id, fc.boolean()])),
);
const rulesWith = (on: Record<string, boolean>): RuleSettings =>
  ruleSettingsSchema.parse(Object.fromEntries(Object.entries(on).map(([id, value]) => [id, { on: value }])));

const EVERY_S = 5;
const watchOf = (dive: Dive, rules: RuleSettings, setup = setupOf()): Watch => watchDive(dive, setup, rules, EVERY_S);
const same = (one: Float64Array, other: Float64Array) =>
  one.length === other.length && one.every((value, index) => Object.is(value, other[index]));

describe('the rules', () => {
  it('leave the model’s tensions and figures the same, whichever are on', () => {
    law(
      fc.property(days, switches, (dive, on) => {
        const truth = computeTimeline(dive, EVERY_S);
        const watch = watchOf(dive, rulesWith(on));
        expect(same(watch.timeline.nitrogenBar, truth.nitrogenBar)).toBe(true);
        const figures = figuresOf(truth, dive.settings);
        expect(same(watch.figures.ceilingM, figures.ceilingM)).toBe(true);
        expect(same(watch.figures.noStopMin, figures.noStopMin)).toBe(true);
      }),
      DRAWS,
    );
  });

  it('never clear a safety stop outside its band, nor while a stop must be made', () => {
    let cleared = 0;
    law(
      fc.property(
        daysOf(fc.oneof(levels, withSafetyStop)),
        fc.constantFrom('pauses' as const, 'extends' as const),
        (dive, outside) => {
          const watch = watchOf(dive, ruleSettingsSchema.parse({ safetyStop: { outside }, imposedStop: { on: true } }));
          for (const event of watch.events.filter(({ kind }) => kind === 'safety-stop-done')) {
            const sample = watch.timeline.timeS.indexOf(event.timeS);
            expect(watch.timeline.depthM[sample]!).toBeGreaterThanOrEqual(3 - EDGE_M);
            expect(watch.timeline.depthM[sample]!).toBeLessThanOrEqual(6 + EDGE_M);
            expect(watch.figures.ceilingM[sample]).toBe(0);
            expect(watch.tracks.imposedStopM[sample]).toBe(0);
            cleared += 1;
          }
        },
      ),
      DRAWS,
    );
    // By chance some fifteen are: far fewer, and the law would have been put to nothing.
    expect(cleared).toBeGreaterThan(2);
  });

  it('make nothing shorter or shallower by a penalty', () => {
    const off = {
      longerSafetyStop: { on: false },
      imposedStop: { on: false },
      tighterLimits: { on: false },
      lockOut: { on: false },
    };
    let punished = 0;
    law(
      fc.property(
        daysOf(fc.oneof(levels, tooFast, tooFast)),
        fc.constantFrom('longerSafetyStop', 'imposedStop', 'tighterLimits'),
        (dive, penalty) => {
          const without = watchOf(dive, ruleSettingsSchema.parse(off));
          const withIt = watchOf(dive, ruleSettingsSchema.parse({ ...off, [penalty]: { on: true } }));
          punished += withIt.events.filter(({ rule }) => rule === penalty).length;
          for (let i = 0; i < without.timeline.length; i += 13) {
            const one = shownAt(without, i);
            const other = shownAt(withIt, i);
            // To rounding: their anchors are found apart.
            expect(other.noStopMin ?? 100).toBeLessThanOrEqual((one.noStopMin ?? 100) + 1e-9);
            // With low under high, tighter limits sink the anchor too: half-way up the flatter line may lie above the other.
            const { low, high } = dive.settings.gradientFactors;
            if (penalty !== 'tighterLimits' || low === high)
              expect(other.ceilingM ?? 0).toBeGreaterThanOrEqual((one.ceilingM ?? 0) - 1e-9);
            expect(other.timeToSurfaceMin ?? 0).toBeGreaterThanOrEqual((one.timeToSurfaceMin ?? 0) - 1e-9);
            if (one.safetyStop && other.safetyStop && penalty === 'longerSafetyStop') {
              expect(other.safetyStop.leftS).toBeGreaterThanOrEqual(one.safetyStop.leftS);
            }
          }
        },
      ),
      DRAWS,
    );
    // By chance one penalty a draw or more.
    expect(punished).toBeGreaterThan(20);
  });

  it('never show a limit in gauge mode or while locked', () => {
    law(
      fc.property(days, switches, fc.constantFrom('gauge' as const, 'dive' as const), (dive, on, mode) => {
        const watch = watchOf(dive, rulesWith({ ...on, requiredStops: true, lockOut: true }), setupOf({ mode }));
        for (let i = 0; i < watch.timeline.length; i += 17) {
          const shown = shownAt(watch, i);
          if (shown.mode !== 'gauge' && shown.mode !== 'locked out') continue;
          const {
            noStopMin,
            ceilingM,
            requiredStop,
            requiredStops,
            timeToSurfaceMin,
            imposedStop,
            safetyStop,
            alarms,
            noFlyH,
            rateMMin,
          } = shown;
          expect(
            [noStopMin, ceilingM, requiredStop, timeToSurfaceMin, imposedStop, safetyStop, noFlyH, rateMMin].every(
              (value) => value === null,
            ),
          ).toBe(true);
          expect([...requiredStops, ...alarms]).toEqual([]);
        }
        if (mode === 'gauge') expect(watch.events).toEqual([]);
      }),
      DRAWS,
    );
  });

  it('give a unit set right the truth, to the last bit', () => {
    law(
      fc.property(days, (dive) => {
        const { settings } = dive;
        const right = setupOf({
          gas: settings.gas,
          altitudeM: settings.altitudeM,
          water: settings.water,
          gradientFactors: settings.gradientFactors,
        });
        const spelt = watchOf(dive, DEFAULT_RULES, right);
        const silent = watchOf(dive, DEFAULT_RULES);
        expect(same(spelt.timeline.nitrogenBar, silent.timeline.nitrogenBar)).toBe(true);
        expect(same(spelt.timeline.depthM, computeTimeline(dive, EVERY_S).depthM)).toBe(true);
        expect(spelt.events).toEqual(silent.events);
      }),
      DRAWS,
    );
  });

  it('tell their events in the order of time, and lock nobody who owes nothing', () => {
    law(
      fc.property(days, switches, (dive, on) => {
        const watch = watchOf(dive, rulesWith(on));
        const times = watch.events.map(({ timeS }) => timeS);
        expect(times).toEqual([...times].sort((one, other) => one - other));
        const owed =
          watch.events.some(({ kind }) => kind === 'stop-imposed') ||
          watch.dives.some(({ requiredStop }) => requiredStop);
        if (!owed) expect(watch.events.filter(({ kind }) => kind === 'locked-out')).toEqual([]);
      }),
      DRAWS,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plannedAt } from '@/lib/ascent/plan/ascent-start';
import { figuresOf } from '@/lib/ascent/figures';
import { parseScript } from '@/lib/dive/script';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { computeTimeline } from '@/lib/dive/timeline';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { watchDive } from '@/lib/rules/watch';
import { breachesIn } from '@/lib/ways-out/breaches';
import { dayOf } from '@/lib/ways-out/day';
import { LEVERS } from '@/lib/ways-out/levers/all';
import type { Target } from '@/lib/ways-out/trouble';
import { troubleOf, waysOut } from '@/lib/ways-out/ways-out';
import { law } from './law';
import { diveOf } from '../unit/read';

/*
 * What a way out says of a dive is held against the dive worked out in plain loops, at every few seconds and at every
 * change of step, with none of the searching that found it.
 */

const whole = (min: number, max: number) => fc.integer({ min, max });

/** Dives as people write them: square, in levels, up at any rate, on air or richer, high up, with any limits. */
const oneDive = (system: UnitSystem) =>
  fc
    .record({
      levels: fc.array(fc.record({ depth: whole(4, 14), minutes: whole(1, 30) }), { minLength: 1, maxLength: 3 }),
      up: whole(1, 6),
      stop: fc.option(whole(1, 5), { nil: undefined }),
    })
    .map(({ levels, up, stop }) => {
      const metric = system === 'metric';
      const depth = (steps: number) => (metric ? `${steps * 3} m` : `${steps * 10} ft`);
      const rate = metric ? `${up * 3} m/min` : `${up * 10} ft/min`;
      const falling = [...levels].sort((one, other) => other.depth - one.depth);
      return [
        ...falling.flatMap((level, index) => [
          ...(index > 0 && falling[index - 1]!.depth === level.depth
            ? []
            : [
                `${index === 0 ? 'descend' : 'ascend'} to ${depth(level.depth)} at ${index === 0 ? (metric ? '18 m/min' : '60 ft/min') : rate}`,
              ]),
          `stay ${level.minutes} min`,
        ]),
        ...(stop === undefined ? [] : [`ascend to ${metric ? '5 m' : '15 ft'} at ${rate}`, `stay ${stop} min`]),
        `ascend to surface at ${rate}`,
      ].join('\n');
    });

const anyScript = fc.constantFrom<UnitSystem>('metric', 'imperial').chain((system) =>
  fc
    .record({
      gas: fc.constantFrom('air', 'air', '32%', '28%'),
      limits: fc.constantFrom('85/85', '85/85', '40/85', '30/70', '95/95'),
      altitude: fc.constantFrom('0 m', '0 m', '1500 m'),
      dives: fc.array(oneDive(system), { minLength: 1, maxLength: 2 }),
      interval: whole(20, 180),
    })
    .map(({ gas, limits, altitude, dives, interval }) => ({
      system,
      script: `gas: ${gas}\ngradient factors: ${limits}\naltitude: ${altitude}\n${dives.join(`\ninterval ${interval} min\n`)}\n`,
    })),
);

const anyQuestion = fc.record({ asked: anyScript, target: fc.constantFrom<Target>('stop', 'ceiling', 'slow-down') });

/** Looked at coarsely, and where nothing is found ever more finely, s. */
const EVERY_S = [30, 2];

function has(script: string, target: Target): boolean {
  const dive = diveOf(script);
  if (target === 'slow-down') return breaches(script, DEFAULT_RULES) > 0;
  return EVERY_S.some((everyS) => {
    const timeline = computeTimeline(dive, everyS);
    const figures = figuresOf(timeline, dive.settings);
    return timeline.timeS.some(
      (_, i) => figures.ceilingM[i]! > 0 && (target === 'ceiling' || plannedAt(timeline, figures, i).stops.length > 0),
    );
  });
}

const UNLOCKED = { ...DEFAULT_RULES, lockOut: { ...DEFAULT_RULES.lockOut, on: false } };

/** Rises too fast, be the unit locked by then or not: a stop left out on the first dive hides those of the next. */
function breaches(script: string, rules = UNLOCKED): number {
  const parsed = parseScript(script);
  if (!parsed.ok) return 0;
  const { events } = watchDive(parsed.dive, SET_RIGHT, rules, 1, { intervalEveryS: 10 });
  return events.filter(({ kind }) => kind === 'slow-down').length;
}

describe('a way out of a stop, a ceiling or a “slow down”', () => {
  it('is free of it, and no rise of it is too fast that was not before', () => {
    law(
      fc.property(anyQuestion, ({ asked: { script, system }, target }) => {
        const before = breaches(script);
        for (const way of waysOut(script, { target, system })) {
          if ('none' in way) continue;
          expect(has(way.script, target), way.text).toBe(false);
          // A wait cuts a rise that was too fast in two; it makes none too fast that was not.
          if (!LEVERS.find(({ id }) => id === way.lever)!.keepsRates)
            expect(breaches(way.script), way.text).toBeLessThanOrEqual(before);
        }
      }),
      25,
    );
  });

  it('is the smallest that is enough: every lesser step has it still; and where there is none, every step has', () => {
    law(
      fc.property(anyQuestion, ({ asked: { script, system }, target }) => {
        const question = { target, system };
        const day = dayOf(script, system)!;
        const trouble = troubleOf(script, question);
        const ways = waysOut(script, question);
        expect(has(script, target)).toBe(trouble !== undefined);
        expect(ways.length > 0).toBe(trouble !== undefined);
        // Where a day has several dives, levers are pulled on one after another; the scan below is of one.
        fc.pre(trouble !== undefined && day.dives.length === 1);
        const before = breaches(script);
        const dive = day.dives[0]!;
        for (const way of ways) {
          const lever = LEVERS.find(({ id }) => id === way.lever)!;
          const range = lever.range({
            day,
            dive,
            target,
            trouble: trouble!,
            rules: DEFAULT_RULES,
            breaches: () => breachesIn(day.dive, DEFAULT_RULES),
          });
          if ('none' in range) continue;
          for (const tried of range.tries) {
            const changed = tried.script();
            if (!('none' in way) && changed === way.script) break;
            if (changed === undefined || tried.but) continue;
            const still = has(changed, target) || (!lever.keepsRates && breaches(changed) > before);
            expect(still, `${way.lever}: ${tried.doing}\n${script}`).toBe(true);
          }
        }
      }),
      12,
    );
  });
});

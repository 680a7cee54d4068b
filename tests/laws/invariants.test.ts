import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingsOf } from '@/app/commands/readings/readings-of';
import { ascentStartAt } from '@/lib/ascent/plan/ascent-start';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { ascentPlanner, type AscentPart, type Schedule } from '@/lib/ascent/plan/schedule';
import { stopChanges } from '@/lib/ascent/stop-changes';
import type { StopState } from '@/lib/ascent/stop-state';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { law } from './law';
import { along, ceilingM, settled, worstBar, type Diver, type Way } from './second-model/second-model';
import { anyToldDay, said, scriptOf, toldOf, type ToldDay } from './second-model/told-day';
import { diveOf } from '../unit/read';

/*
 * What must hold of every dive, and what a second model, written for these tests alone, says of it. The second model goes
 * in small steps, so that it is as near as those; the engine has to be as near to itself as rounding lets it.
 */

const SAME = 1e-6;

/** Where two figures, texts or lists of them differ, each with its path. */
function differences(one: unknown, other: unknown, path: string): string[] {
  if (typeof one === 'number' && typeof other === 'number')
    return Math.abs(one - other) <= SAME * Math.max(1, Math.abs(one)) ? [] : [`${path}: ${one} for ${other}`];
  if (typeof one === 'object' && typeof other === 'object' && one !== null && other !== null) {
    const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
    return [...keys].flatMap((key) =>
      differences((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key], `${path}.${key}`),
    );
  }
  return one === other ? [] : [`${path}: ${JSON.stringify(one)} for ${JSON.stringify(other)}`];
}

const EVERY_S = 240;

function readings(script: string, everyS = EVERY_S) {
  const { samples, events } = readingsOf(diveOf(script), [], everyS);
  return { samples, events };
}

/** Each sample of the first that the second has too, and all events. */
function expectSame(first: ReturnType<typeof readings>, second: ReturnType<typeof readings>): void {
  const told = new Map(second.samples.map((sample) => [sample.timeS.toFixed(5), sample]));
  const both = first.samples.filter(({ timeS }) => told.has(timeS.toFixed(5)));
  expect(both.length).toBeGreaterThan(1);
  expect(
    [
      ...both.flatMap((sample) => differences(sample, told.get(sample.timeS.toFixed(5)), `at ${sample.timeS} s`)),
      ...differences(first.events, second.events, 'events'),
    ].slice(0, 5),
  ).toEqual([]);
}

describe('no figure, stop, display or event of a dive differs', () => {
  it('by where its steps are cut in two', () => {
    law(
      fc.property(anyToldDay, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (day, cut) =>
        expectSame(readings(scriptOf(day)), readings(scriptOf(day, { cut }))),
      ),
      3,
    );
  });

  it('by how finely it is sampled', () => {
    law(
      fc.property(anyToldDay, fc.constantFrom(60, 7, 48.6, 0.9 * 40), (day, everyS) =>
        expectSame(readings(scriptOf(day)), readings(scriptOf(day), everyS)),
      ),
      2,
    );
  });

  it('by being written in feet', () => {
    law(
      fc.property(anyToldDay, (day) => expectSame(readings(scriptOf(day)), readings(scriptOf(day, { feet: true })))),
      2,
    );
  });
});

/** How near the second model's small steps come, m and bar. */
const NEAR_M = 0.02;
const NEAR_BAR = 5e-4;
const STEP_S = 1;

interface Standing {
  readonly timeS: number;
  readonly depthM: number;
  readonly way: Way;
  readonly diver: Diver;
}

/** How the second model has the diver stand at every multiple of some seconds within its ways. */
function standings(day: ToldDay, everyS: number): Standing[] {
  const { place, factors, ways } = toldOf(day);
  const all: Standing[] = [];
  for (const { minutes, way, diver, depthM } of along(place, settled(place), factors, ways, STEP_S)) {
    const timeS = minutes * 60;
    if (Math.abs(timeS / everyS - Math.round(timeS / everyS)) < 1e-6) all.push({ timeS, depthM, way, diver });
  }
  return all;
}

const withinLegs = (day: ToldDay) => {
  const { ways } = toldOf(day);
  const changes = ways.reduce((ends: number[], { minutes }) => [...ends, (ends.at(-1) ?? 0) + minutes * 60], [0]);
  return (timeS: number) => changes.every((change) => Math.abs(change - timeS) > 1);
};

describe('the second model', () => {
  it('has the same ceiling', () => {
    law(
      fc.property(anyToldDay, (day) => {
        const { place, factors } = toldOf(day);
        const dive = diveOf(scriptOf(day));
        const timeline = computeTimeline(dive, 60);
        const figures = figuresOf(timeline, dive.settings);
        for (const { timeS, diver } of standings(day, 60)) {
          const own = figures.ceilingM[sampleAt(timeline, timeS + 1e-6)]!;
          const second = ceilingM(place, diver, factors);
          if (Math.abs(own - second) > NEAR_M) expect.fail(`at ${timeS} s ${own} m for ${second} m\n${scriptOf(day)}`);
        }
      }),
      6,
    );
  });

  it('keeps the line all along the planned ascent, and no longer does where a stop is a minute shorter', () => {
    law(
      fc.property(anyToldDay, fc.nat(), (day, chance) => {
        const { place, factors } = toldOf(day);
        const dive = diveOf(scriptOf(day));
        const timeline = computeTimeline(dive, 60);
        const figures = figuresOf(timeline, dive.settings);
        const planAscent = ascentPlanner(dive.settings, timeline);
        const inner = withinLegs(day);
        const asked = standings(day, 60).filter(({ timeS, depthM }) => depthM > 0 && inner(timeS));
        for (let i = chance % 7; i < asked.length; i += 7) {
          const { timeS, depthM, diver } = asked[i]!;
          const start = ascentStartAt(timeline, figures, sampleAt(timeline, timeS + 1e-6));
          const schedule = planAscent(start);
          if (schedule.timeToSurfaceMin === Infinity) continue;
          const where = `at ${timeS} s, ${depthM} m: ${said(schedule)}\n${scriptOf(day)}`;
          const { diver: from, ways } = afterGoingDown(day, diver, schedule);
          expect(worstBar(place, from, factors, ways), where).toBeLessThan(NEAR_BAR);
          ways.forEach((way, index) => {
            const atOnce = index === 0 && Math.abs(way.fromM - depthM) < 1e-6;
            if (way.fromM !== way.toM || way.minutes < 1 - 1e-9 || atOnce) return;
            // The stop itself, and the climb to the next level: what comes after may break the line for other reasons.
            const upTo = ways.findIndex(({ fromM, toM }, later) => later > index && fromM !== toM);
            const shorter = [...ways.slice(0, index), { ...way, minutes: way.minutes - 1 }, ways[upTo]!];
            expect(worstBar(place, from, factors, shorter), `shorter ${index} ${where}`).toBeGreaterThan(-NEAR_BAR);
          });
        }
      }),
      4,
    );
  });

  it('stands in the state that the last change of state told, and asks for its stop', () => {
    law(
      fc.property(anyToldDay, (day) => {
        const { place, factors } = toldOf(day);
        const dive = diveOf(scriptOf(day));
        const timeline = computeTimeline(dive, 60);
        const changes = stopChanges(timeline, figuresOf(timeline, dive.settings));
        const inner = withinLegs(day);
        for (const { timeS, depthM, way, diver } of standings(day, 47)) {
          if (!inner(timeS) || changes.some((change) => Math.abs(change.timeS - timeS) < 3)) continue;
          const told = changes.findLast((change) => change.timeS <= timeS)!;
          const ceiling = ceilingM(place, diver, factors);
          const direct = directUp(day, depthM, way);
          const worst = ceiling > depthM ? Infinity : worstBar(place, diver, factors, direct);
          // So near the limit either is right.
          if (Math.abs(worst) < NEAR_BAR || (ceiling > 0 && ceiling < NEAR_M)) continue;
          const state = stateOf(ceiling > 0, worst > 0);
          if (told.state !== state)
            expect.fail(
              `at ${timeS} s ${told.state} for ${state}, ceiling ${ceiling}, over ${worst}\n${scriptOf(day)}`,
            );
        }
        for (let i = 1; i < changes.length; i += 1) {
          const [before, after] = [changes[i - 1]!, changes[i]!];
          expect(after.timeS).toBeGreaterThanOrEqual(before.timeS);
          expect([before.state, before.stopM]).not.toEqual([after.state, after.stopM]);
        }
      }),
      6,
    );
  });
});

function stateOf(ceilingNow: boolean, stopOnTheWay: boolean): StopState {
  if (ceilingNow) return stopOnTheWay ? 'owed' : 'clearing';
  return stopOnTheWay ? 'filling' : 'free';
}

/** The way straight up on the richest carried gas allowed at each depth. */
function directUp(day: ToldDay, depthM: number, { o2, he }: Way): Way[] {
  const rate = day.ascentMMin;
  const richer = day.carries50From21 && o2 < 0.5;
  const up = (fromM: number, toM: number, gas: { o2: number; he: number }): Way => ({
    fromM,
    toM,
    minutes: (fromM - toM) / rate,
    ...gas,
  });
  if (!richer) return [up(depthM, 0, { o2, he })];
  const rich = { o2: 0.5, he: 0 };
  return depthM <= 21 ? [up(depthM, 0, rich)] : [up(depthM, 21, { o2, he }), up(21, 0, rich)];
}

/** The ascent from where the line is judged: after the way down it may begin with. */
function afterGoingDown(day: ToldDay, diver: Diver, { parts }: Schedule): { diver: Diver; ways: Way[] } {
  const { place, factors } = toldOf(day);
  const ways = parts.map(({ fromM, toM, minutes, gas }: AscentPart): Way => ({ fromM, toM, minutes, ...gas }));
  let from = diver;
  while (ways[0] && ways[0].toM > ways[0].fromM) {
    for (const { diver: then } of along(place, from, factors, [ways.shift()!], STEP_S)) from = then;
  }
  return { diver: from, ways };
}

describe('no-stop times at one depth on one gas', () => {
  it('fall a minute a minute, with credit and without', () => {
    law(
      fc.property(anyToldDay, (day) => {
        const dive = diveOf(scriptOf(day));
        const timeline = computeTimeline(dive, 60);
        const figures = figuresOf(timeline, dive.settings);
        timeline.legs.forEach(({ fromM, toM, endS, startS, interval }) => {
          if (fromM !== toM || interval || endS - startS < 150) return;
          const first = sampleAt(timeline, startS + 1e-6);
          const before = figuresAt(timeline, figures, first);
          const after = figuresAt(timeline, figures, sampleAt(timeline, endS - 30));
          const goneMin = (timeline.timeS[sampleAt(timeline, endS - 30)]! - timeline.timeS[first]!) / 60;
          for (const [one, other] of [
            [before.noStop.minutes, after.noStop.minutes],
            [before.creditedNoStopMin, after.creditedNoStopMin],
          ] as const)
            if (one <= NO_STOP_CAP_MIN && one > goneMin) expect(Math.abs(one - goneMin - other)).toBeLessThan(SAME);
        });
      }),
      12,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figuresAt, figuresOf, loadAt, type FiguresNow } from '@/lib/ascent/figures';
import { supersaturationOf } from '@/lib/ascent/supersaturation';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { shownAt, type Shown } from '@/lib/rules/unit/shown';
import { watchDive } from '@/lib/rules/watch';
import { modelSayings, standingOf } from '@/lib/sayings/model-readings';
import type { Saying } from '@/lib/sayings/saying';
import { unitSayings } from '@/lib/sayings/unit-readings';
import { anyDay } from './arbitrary-dive';
import { law } from './law';

/** So much of a step is the dust of sums. */
const DUST = 2e-6;
const CAP_MIN = 99;
const SYSTEMS: readonly UnitSystem[] = ['metric', 'imperial'];
/** One foot, m; written here again, as this file checks who prints feet. */
const FOOT_M = 0.3048;

/** A number as it is printed, with a true minus sign. */
const read = (value: string) => Number(value.replace('−', '-'));

/** The finest step of a depth in a system, m. */
const stepM = (system: UnitSystem) => (system === 'metric' ? 0.1 : FOOT_M);

function expectUnit({ unit }: Saying, expected: string) {
  expect(unit).toBe(expected);
}

/** Whole minutes that are there: never more than the figure, never a whole one less. */
function expectDown(said: Saying, minutes: number) {
  expectUnit(said, 'min');
  if (minutes > CAP_MIN) {
    expect(said.value).toBe('>99');
    expect(said.text).toBe('more than 99 min');
    return;
  }
  const shown = read(said.value);
  expect(shown).toBeLessThanOrEqual(minutes + DUST);
  expect(shown).toBeGreaterThan(minutes - 1 - DUST);
  expect(said.text).toBe(`${said.value} min`);
}

/** Whole minutes that are needed: never less than the figure, never a whole one more. */
function expectUp(said: Saying, minutes: number) {
  if (minutes === Infinity) {
    expect(said.text).toBe('never');
    return;
  }
  expectUnit(said, 'min');
  expect(read(said.value)).toBeGreaterThanOrEqual(minutes - DUST);
  expect(read(said.value)).toBeLessThan(minutes + 1 + DUST);
}

/** A depth to stay below: never shown shallower than it is, never a whole step deeper. */
function expectDeeper(said: Saying, depthM: number, system: UnitSystem) {
  if (depthM <= 0) {
    expect(said.text).toBe('none');
    return;
  }
  expectUnit(said, system === 'metric' ? 'm' : 'ft');
  const shownM = read(said.value) * (system === 'metric' ? 1 : FOOT_M);
  expect(shownM).toBeGreaterThanOrEqual(depthM - DUST);
  expect(shownM).toBeLessThan(depthM + stepM(system) + DUST);
  expect(said.text).toBe(`${said.value} ${said.unit}`);
}

/** Stops of every 3 m are those of every 10 ft; others are never told shallower. */
function expectStop(said: Saying, stop: { depthM: number; minutes: number } | undefined, system: UnitSystem) {
  if (!stop) {
    expect(said.text).toBe('none');
    return;
  }
  const feet = Number.isInteger(stop.depthM / 3) ? (stop.depthM / 3) * 10 : Math.ceil(stop.depthM / FOOT_M - DUST);
  const metres = Math.ceil(stop.depthM * 10 - DUST) / 10;
  const depth = system === 'metric' ? `${metres} m` : `${feet} ft`;
  expect(`${said.value} ${said.unit}`).toBe(depth);
  const [told = '', at] = said.text.split(' min at ');
  if (stop.minutes === Infinity) {
    expect(said.text).toBe(`without end at ${depth}`);
    return;
  }
  expect(at).toBe(depth);
  // Where going down to it is all that it takes, no minutes are told that could be taken for none needed.
  if (stop.minutes === 0) {
    expect(told).toBe('under 1');
    return;
  }
  expect(read(told)).toBeGreaterThanOrEqual(stop.minutes - DUST);
  expect(read(told)).toBeLessThan(stop.minutes + 0.1 + DUST);
}

/** The largest of the sixteen, worked out beside the engine's own search for it. */
function most(timeline: Timeline, sample: number, ambientBar: number) {
  const load = loadAt(timeline, sample);
  const all = Array.from({ length: 16 }, (_, c) => supersaturationOf(load, c, ambientBar));
  return { share: Math.max(...all), leads: (leader: number) => all[leader - 1] === Math.max(...all) };
}

function expectShare(said: Saying, timeline: Timeline, sample: number, ambientBar: number) {
  const { share, leads } = most(timeline, sample, ambientBar);
  expectUnit(said, '%');
  expect(Math.abs(read(said.value) - share * 100)).toBeLessThanOrEqual(0.5 + DUST);
  expect(leads(said.leader)).toBe(true);
  expect(said.note).toContain(`compartment ${said.leader}`);
}

/** The compartment and the minutes told in the words under a figure are those of that figure. */
function expectNotes(said: ReturnType<typeof modelSayings>, { ceiling, noStop, schedule }: FiguresNow) {
  const compartment = (note: string) => Number(/compartment (\d+)/.exec(note)?.[1] ?? 0);
  if (ceiling.depthM > 0) expect(compartment(said.ceiling.note)).toBe(ceiling.leader);
  if (!said['no-stop'].note.startsWith('the way up')) expect(compartment(said['no-stop'].note)).toBe(noStop.leader);
  const minutes = / (?:for|left out:) ([\d.]+) min/.exec(said['required-stop'].note)?.[1];
  const stop = schedule.stops[0];
  expect(minutes).not.toBe('0');
  if (stop && minutes !== undefined) {
    expect(Number(minutes)).toBeGreaterThanOrEqual(stop.minutes - DUST);
    expect(Number(minutes)).toBeLessThan(stop.minutes + 0.1 + DUST);
  }
}

/** Where a way up that never opens is held: where its plan leaves off. */
function endlessStop(timeline: Timeline, sample: number, { schedule }: FiguresNow) {
  if (schedule.timeToSurfaceMin !== Infinity) return undefined;
  return { depthM: schedule.parts.at(-1)?.toM ?? timeline.depthM[sample]!, minutes: Infinity };
}

/** The two questions of physics, asked again: is there a ceiling, does the way up need a stop? */
function stateOf({ ceiling, schedule }: FiguresNow) {
  const stop = schedule.stops.length > 0 || schedule.timeToSurfaceMin === Infinity;
  if (ceiling.depthM > 0) return stop ? 'owed' : 'clearing';
  return stop ? 'filling' : 'free';
}

const samplesOf = ({ length }: { length: number }, picks: readonly number[]) => [
  ...new Set(picks.map((p) => p % length)),
];
const picks = fc.array(fc.nat(), { minLength: 4, maxLength: 8 });

describe('what is said of the model', () => {
  it('never rounds a no-stop time up, a stop or a way up down, or a ceiling shallower, in either system', () => {
    law(
      fc.property(anyDay, picks, (dive, drawn) => {
        const timeline = computeTimeline(dive, 20);
        const figures = figuresOf(timeline, dive.settings);
        for (const sample of samplesOf(timeline, drawn)) {
          const now = figuresAt(timeline, figures, sample);
          for (const system of SYSTEMS) {
            const said = modelSayings({ timeline, sample, now }, system);
            if (stateOf(now) === 'filling') expect(said['no-stop'].text).toBe('none');
            else expectDown(said['no-stop'], now.noStop.minutes);
            expectDown(said['credited-no-stop'], now.creditedNoStopMin);
            expectDeeper(said.ceiling, now.ceiling.depthM, system);
            expectStop(said['required-stop'], now.schedule.stops[0] ?? endlessStop(timeline, sample, now), system);
            expectUp(said['time-to-surface'], now.schedule.timeToSurfaceMin);
            expectNotes(said, now);
            expectShare(said.supersaturation, timeline, sample, timeline.ambientBar[sample]!);
            expectShare(said['surfacing-supersaturation'], timeline, sample, timeline.surfaceBar);
            const shownM = read(said.depth.value) * (system === 'metric' ? 1 : FOOT_M);
            expect(Math.abs(shownM - timeline.depthM[sample]!)).toBeLessThanOrEqual(stepM(system) / 2 + DUST);
          }
        }
      }),
      40,
    );
  });

  it('never contradicts itself about a stop', () => {
    law(
      fc.property(anyDay, picks, (dive, drawn) => {
        const timeline = computeTimeline(dive, 20);
        const figures = figuresOf(timeline, dive.settings);
        for (const sample of samplesOf(timeline, drawn)) {
          const moment = { timeline, sample, now: figuresAt(timeline, figures, sample) };
          const state = stateOf(moment.now);
          expect(standingOf(moment).state).toBe(state);
          const said = modelSayings(moment, 'metric');
          expect(said.ceiling.note === 'you may surface').toBe(state === 'free');
          expect(said['required-stop'].note === 'straight up is tolerated').toBe(state === 'free');
          expect(said['required-stop'].text === 'none').toBe(state === 'free' || state === 'clearing');
          expect(said.ceiling.text === 'none').toBe(state === 'free' || state === 'filling');
          expect(said['no-stop'].note.startsWith('over, by')).toBe(state === 'owed' || state === 'clearing');
          const { noStop, creditedNoStopMin } = moment.now;
          // A credited time below the plain one is explained where it stands.
          if (state === 'free' && creditedNoStopMin < noStop.minutes)
            expect(said['no-stop'].note).toContain('still taking up gas');
        }
      }),
      40,
    );
  });
});

describe('what is said of a unit', () => {
  it('is rounded as the model’s figures are, and never contradicts itself, in either system', () => {
    law(
      fc.property(anyDay, picks, (dive, drawn) => {
        const watch = watchDive(dive, SET_RIGHT, DEFAULT_RULES, 20);
        for (const sample of samplesOf(watch.timeline, drawn)) {
          for (const system of SYSTEMS) expectSaid(shownAt(watch, sample, system), system);
        }
      }),
      40,
    );
  });

  function expectSaid(shown: Shown, system: UnitSystem) {
    const said = unitSayings(shown, system);
    const dives = shown.mode === 'dive';
    if (!dives)
      for (const id of ['no-stop', 'ceiling', 'required-stop'] as const) expect(said[id].text).toBe('not shown');
    else {
      if (shown.ceilingM === null && shown.requiredStop) expect(said['no-stop'].text).toBe('none');
      else expectDown(said['no-stop'], shown.noStopOverCap ? Infinity : shown.noStopMin!);
      expectDeeper(said.ceiling, shown.ceilingM ?? 0, system);
      expectStop(said['required-stop'], shown.requiredStop ?? undefined, system);
      expectUp(said['time-to-surface'], shown.timeToSurfaceMin!);
    }
    expectCountdown(said['safety-stop'], shown.safetyStop?.leftS);
    expectCountdown(said['imposed-stop'], shown.imposedStop ? shown.imposedStop.minutes * 60 : undefined);
    if (shown.noFlyH !== null) expect(minutesOf(said['no-fly'].text)).toBeGreaterThanOrEqual(shown.noFlyH * 60 - DUST);
    if (shown.desaturationH !== null && Number.isFinite(shown.desaturationH))
      expect(minutesOf(said.desaturation.text)).toBeGreaterThanOrEqual(shown.desaturationH * 60 - DUST);
    const { rateMMin } = shown;
    if (rateMMin !== null) {
      expect(said.rate.text.startsWith('up ')).toBe(rateMMin >= 0.05);
      expect(said.rate.text.startsWith('down ')).toBe(rateMMin <= -0.05);
      expect(said.rate.note).toMatch(rateMMin >= 0.05 ? /^up, / : rateMMin <= -0.05 ? /^down;/ : /^steady;/);
    }
  }

  /** Seconds still to stop are never told fewer than they are. */
  function expectCountdown({ value }: Saying, leftS: number | undefined) {
    const clock = /^(\d+):(\d\d)$/.exec(value);
    expect(clock === null).toBe(leftS === undefined);
    if (clock && leftS !== undefined) {
      const shownS = Number(clock[1]) * 60 + Number(clock[2]);
      expect(shownS).toBeGreaterThanOrEqual(leftS - DUST * 60);
      expect(shownS).toBeLessThan(leftS + 1);
    }
  }

  /** `1 h 05 min` in minutes. */
  function minutesOf(text: string): number {
    const [, hours = '0', minutes = '0'] = /^(?:(\d+) h)?(?: ?(\d+) min)?$/.exec(text) ?? [];
    return Number(hours) * 60 + Number(minutes);
  }
});

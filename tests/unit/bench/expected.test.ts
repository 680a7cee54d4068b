import { describe, expect, it } from 'vitest';
import { readyRuns } from '@/content/bench/runs';
import { barPerMetre } from '@/lib/physics/water';
import { altitudeOfAtmosphere, atmosphereBar } from '@/lib/physics/atmosphere';
import { DEFAULT_BENCH, benchUnitSchema, type BenchSettings } from '@/lib/bench/bench-settings';
import { chamberDive, fasterThanStated, unitDepthM } from '@/lib/bench/chamber-dive';
import { parseRun, type ChamberRun } from '@/lib/bench/chamber-run';
import { expectedOf } from '@/lib/bench/expected';
import { sayExpected } from '@/lib/bench/bench-words';
import { legsToRun, liveAt, tookOf } from '@/lib/bench/live-run';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { RATE_PRESETS } from '@/lib/rules/settings/rate-limits';
import { shownAt } from '@/lib/rules/unit/shown';
import { watchDive } from '@/lib/rules/watch';
import { printAs } from '@/lib/sayings/measures';

function runOf(script: string): ChamberRun {
  const read = parseRun(script);
  if (!read.ok) throw new Error(read.errors[0]!.message);
  return read.run;
}
const salt = benchUnitSchema.parse({ id: 'a', name: 'A' });
const HOLD =
  'descend to 20 m at 10 m/min # check: arrived\nstay 5 min # check: held\nascend to 5 m at 18 m/min # check: up\nstay 1 min # check: 5 m\nascend to surface at 5 m/min\nstay 1 min # check: out';

describe('a chamber run', () => {
  it('reads the remarks that make checkpoints, with the way and the hold they belong to', () => {
    const { checkpoints } = runOf(HOLD);
    expect(checkpoints.map(({ name, gaugeM, way, moving, hold }) => [name, gaugeM, way, moving, hold])).toEqual([
      ['arrived', 20, 'down', true, 1],
      ['held', 20, 'down', false, 1],
      ['up', 5, 'up', true, 2],
      ['5 m', 5, 'up', false, 2],
      ['out', 0, 'surface', false, 3],
    ]);
  });

  it.each([
    ['descend to 10 m at 10 m/min\nascend to surface at 10 m/min', 'no checkpoint'],
    ['descend to 10 m at 10 m/min # check:\nascend to surface at 10 m/min', 'no name'],
    [
      'descend to 10 m at 10 m/min # check: a\nstay 1 min # check: a\nascend to surface at 10 m/min',
      'another checkpoint',
    ],
    ['descend to 10 m at 10 m/min # check: a', 'at 10 m'],
    ['# check: a\nstay 1 min', 'no step'],
    ['dive to ten', ''],
  ])('refuses %j and says where', (script, message) => {
    const read = parseRun(script);
    expect(read.ok).toBe(false);
    if (!read.ok) {
      expect(read.errors[0]!.message).toContain(message);
      expect(read.errors[0]!.line).toBeGreaterThan(0);
    }
  });

  it.each(readyRuns.map((ready) => [ready.title, ready] as const))(
    'has a ready one, “%s”, that reads',
    (_title, { script }) => {
      expect(runOf(script).checkpoints.length).toBeGreaterThan(5);
    },
  );
});

describe('what a correct unit shows', () => {
  it('is the pressure in metres of its own water: 10 m of fresh water are 9.71 m of salt water', () => {
    // ρ·g·h with 1000 and 1030 kg/m³: 10 · 1000 / 1030 = 9.7087 m.
    expect(unitDepthM(DEFAULT_BENCH, { water: 'salt' }, 10)).toBeCloseTo(10 / 1.03, 10);
    // 10 m · 1000 kg/m³ · 9.80665 m/s² = 98 066.5 Pa, which at 0.1 bar a metre are 9.80665 m.
    expect(unitDepthM(DEFAULT_BENCH, { water: 'reference' }, 10)).toBeCloseTo(9.80665, 10);
  });

  it('has the water that stands over the units added', () => {
    const settings: BenchSettings = { ...DEFAULT_BENCH, gaugeScale: 'reference', headM: 0.4 };
    expect(unitDepthM(settings, { water: 'fresh' }, 10)).toBeCloseTo(1 / barPerMetre('fresh') + 0.4, 10);
    expect(unitDepthM(settings, { water: 'fresh' }, 0)).toBe(0);
  });

  it('agrees with the depth a unit works out for itself while it watches the dive', () => {
    const settings: BenchSettings = { ...DEFAULT_BENCH, headM: 0.4, surfaceBar: 0.95 };
    const run = runOf(HOLD);
    const { timeline } = { timeline: computeTimeline(chamberDive(run, settings), 1) };
    const deepestBar = Math.max(...timeline.ambientBar) - timeline.surfaceBar;
    expect(timeline.surfaceBar).toBeCloseTo(0.95, 12);
    expect(deepestBar / barPerMetre('salt')).toBeCloseTo(expectedOf(run, settings, salt)[0]!.depthM, 9);
  });

  it('is a band of no-stop times, shorter under the stricter limits', () => {
    const [arrived] = expectedOf(runOf(HOLD), DEFAULT_BENCH, salt);
    const oneLimit = (gf: number) => {
      const gradientFactors = { low: gf, high: gf };
      return expectedOf(
        runOf(HOLD),
        { ...DEFAULT_BENCH, strictest: gradientFactors, loosest: gradientFactors },
        salt,
      )[0]!.noStopMin!;
    };
    expect(arrived!.noStopMin).toEqual({ from: oneLimit(0.85).from, to: oneLimit(0.95).to });
    expect(arrived!.noStopMin!.from).toBeLessThan(arrived!.noStopMin!.to);
  });

  it('says minutes and stops as the table of sayings does, under either limits, in metres and feet', () => {
    const HOLDS = HOLD.replace('20 m', '45 m').replace('stay 5 min', 'stay 3 min # check: early\nstay 40 min');
    const run = runOf(HOLDS);
    const { strictest, loosest } = DEFAULT_BENCH;
    const setting = (gradientFactors: BenchSettings['strictest']): BenchSettings => ({
      ...DEFAULT_BENCH,
      strictest: gradientFactors,
      loosest: gradientFactors,
    });
    const moments = [loosest, strictest].map((limits) => {
      const dive = chamberDive(run, setting(limits));
      const rules = { ...DEFAULT_RULES, rateWatch: { ...DEFAULT_RULES.rateWatch, limit: RATE_PRESETS.current.limit } };
      return watchDive(dive, { ...SET_RIGHT, name: 'Unit', water: 'salt', gradientFactors: limits }, rules);
    });
    let minutes = 0;
    let deepestStopM = 0;
    for (const system of ['metric', 'imperial'] as const)
      for (const expected of expectedOf(run, DEFAULT_BENCH, salt)) {
        const [loose, strict] = moments.map((watch) => shownAt(watch, sampleAt(watch.timeline, expected.timeS)));
        const said = sayExpected(expected, system);
        const pair = (id: 'noStopMin' | 'stopM', one: number, other: number) => {
          const [from, to] = [printAs(id, one, system), printAs(id, other, system)];
          return from === to ? to : `${id === 'noStopMin' ? from.replace(' min', '') : from} to ${to}`;
        };
        if (expected.noStopMin) {
          minutes += 1;
          expect(said).toContain(`no-stop time ${pair('noStopMin', strict!.noStopMin!, loose!.noStopMin!)}`);
        }
        if (expected.stopM) {
          const [one, other] = [loose!.requiredStop?.depthM ?? 0, strict!.requiredStop!.depthM];
          deepestStopM = Math.max(deepestStopM, other);
          expect(said).toContain(`required stop ${pair('stopM', one, other)}`);
        }
      }
    expect(minutes).toBeGreaterThan(0);
    // On the scale of stops 12 m are 40 ft, where the depth is 39 ft.
    expect(deepestStopM).toBeGreaterThanOrEqual(12);
  });

  it('sounds the rate alarm where the pressure falls faster than the limit chosen, and nowhere else', () => {
    const alarms = (rateLimit: BenchSettings['rateLimit']) =>
      expectedOf(runOf(HOLD), { ...DEFAULT_BENCH, rateLimit }, salt).map(({ rateAlarm }) => rateAlarm);
    expect(alarms('current')).toEqual([null, null, true, null, null]);
    expect(alarms('classic')).toEqual([null, null, false, null, null]);
  });

  it('is depth alone for a unit in gauge mode', () => {
    const gauge = expectedOf(runOf(HOLD), DEFAULT_BENCH, { ...salt, mode: 'gauge' });
    expect(
      gauge.every(({ noStopMin, stopM, rateAlarm, safetyStop, noFlyH }) =>
        [noStopMin, stopM, rateAlarm, safetyStop, noFlyH].every((figure) => figure === null),
      ),
    ).toBe(true);
  });

  it('goes by the times the run really took', () => {
    const run = runOf(HOLD);
    const late = expectedOf(run, DEFAULT_BENCH, salt, [undefined, 900])[1]!;
    expect(late.timeS).toBe(120 + 900);
    expect(late.noStopMin!.to).toBeLessThan(expectedOf(run, DEFAULT_BENCH, salt)[1]!.noStopMin!.to);
  });
});

describe('the surface pressure as an altitude', () => {
  it.each([1.05, 1.01325, 0.9, 0.7])('of %s bar leads back to it', (bar) => {
    expect(atmosphereBar(altitudeOfAtmosphere(bar))).toBeCloseTo(bar, 12);
  });
});

describe('a live run', () => {
  const run = runOf(HOLD);
  const at = (marks: number[], nowS: number, fastestMMin: number | null = null) =>
    liveAt(run, { fastestMMin }, marks, nowS, 'metric');

  it('says what to do next, where the gauge should be and what is left', () => {
    expect(at([], 0).kind).toBe('ready');
    const half = at([100], 160);
    expect(half).toMatchObject({ kind: 'in', gaugeM: 10, leftS: 60, runS: 60 });
    expect(half.todo).toBe('raise the pressure to 20 m on the gauge in 2:00, which is 10 m/min.');
    expect(at([100, 220], 520)).toMatchObject({ kind: 'hold', leftS: 0, gaugeM: 20 });
    expect(at([0, 1, 2, 3, 4, 5, 6], 7).kind).toBe('over');
  });

  it('warns of a step scripted faster than stated, and of one that was run faster', () => {
    expect(at([0], 1, 8).warning).toContain('asks for 10 m/min');
    expect(at([0, 60], 61, 12).warning).toContain('changed at 20 m/min');
    expect(at([0, 120], 121, 12).warning).toBeUndefined();
    expect(fasterThanStated(run, { ...DEFAULT_BENCH, fastestMMin: 12 })).toEqual([
      { step: 2, fromM: 20, toM: 5, rateMMin: 18 },
    ]);
  });

  it('states one limit in both systems: a step at 30 ft/min keeps 9 m/min', () => {
    const run = (feetMin: number) =>
      runOf(`descend to 30 m at 9 m/min # check: down\nascend to surface at ${feetMin} ft/min # check: out\n`);
    const stated = { ...DEFAULT_BENCH, fastestMMin: 9 };
    expect([29.5, 30, 31].map((feetMin) => fasterThanStated(run(feetMin), stated).length)).toEqual([0, 0, 1]);
  });

  it('keeps how long each step took', () => {
    expect(legsToRun(run)).toHaveLength(6);
    expect(tookOf(run, [10, 130, 431.4])).toEqual([120, 301, undefined, undefined, undefined, undefined]);
  });
});

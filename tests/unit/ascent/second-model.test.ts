import { describe, expect, it } from 'vitest';
import { ascentStartAt } from '@/lib/ascent/plan/ascent-start';
import { breathedAt } from '@/lib/ascent/breathed';
import { ceilingOnLine } from '@/lib/ascent/ceiling';
import { loadAt } from '@/lib/ascent/figures';
import { noStop } from '@/lib/ascent/no-stop';
import { ascentPlanner } from '@/lib/ascent/plan/schedule';
import { gasAt, sampleAt } from '@/lib/dive/timeline';
import { along, ceilingM, settled, worstBar, type Diver, type Way } from '../../laws/second-model/second-model';
import { said, toldOf, type ToldDay } from '../../laws/second-model/told-day';
import { DAYS, differencesBySampling, engineOf } from './days';

/*
 * A few days that between them go every way the engine has, against the second model that the laws hold it to for any day:
 * in small steps, from the published coefficients alone (content/published/zhl16.json).
 */

/** How near the second model's steps come, m, bar and min. */
const NEAR_M = 0.02;
const NEAR_BAR = 1e-3;
const NEAR_MIN = 0.05;
const STEP_S = 2;

interface Standing {
  readonly timeS: number;
  readonly depthM: number;
  readonly way: Way;
  readonly diver: Diver;
}

/** How the second model has the diver stand at every minute. */
function standingsOf(day: ToldDay): Standing[] {
  const { place, factors, ways } = toldOf(day);
  const all: Standing[] = [];
  for (const { minutes, way, diver, depthM } of along(place, settled(place), factors, ways, STEP_S))
    if (Math.abs(minutes - Math.round(minutes)) < 1e-6) all.push({ timeS: minutes * 60, depthM, way, diver });
  return all;
}

describe.each(Object.entries(DAYS))('%s', (_, day) => {
  const { place, factors } = toldOf(day);
  const { dive, timeline, figures } = engineOf(day, 60);
  const standings = standingsOf(day);
  const sampleOf = ({ timeS }: Standing) => sampleAt(timeline, timeS + 1e-6);

  it('has the ceiling of the second model at every minute, on the way up and at rest, and its anchor', () => {
    const deepestM = Math.max(...standings.map(({ diver }) => ceilingM(place, diver, factors)));
    expect(deepestM).toBeGreaterThan(1);
    for (const standing of standings) {
      const sample = sampleOf(standing);
      const second = ceilingM(place, standing.diver, factors);
      if (second > 0 && second < NEAR_M) continue;
      expect(Math.abs(figures.ceilingM[sample]! - second), `ceiling at ${standing.timeS} s`).toBeLessThan(NEAR_M);
      if (factors.low === factors.high) continue;
      const anchorM = Number.isNaN(standing.diver.anchorM) ? 0 : standing.diver.anchorM;
      expect(Math.abs(figures.anchorM[sample]! - anchorM), `anchor at ${standing.timeS} s`).toBeLessThan(NEAR_M);
    }
  });

  it('has its no-stop time: how long the second model stays unbound there', () => {
    const free = standings.filter(({ diver, depthM }) => depthM > 0 && Number.isNaN(diver.anchorM));
    for (const { timeS, depthM, way, diver } of [free[1]!, free.at(-1)!]) {
      const here = { ...way, fromM: depthM, toM: depthM, minutes: 100 };
      let second = Infinity;
      for (const { minutes, diver: then } of along(place, diver, factors, [here], STEP_S))
        if (second === Infinity && !Number.isNaN(then.anchorM)) second = minutes;
      const own = figures.noStopMin[sampleAt(timeline, timeS + 1e-6)]!;
      if (second === Infinity) expect(own, `at ${timeS} s`).toBeGreaterThan(99);
      else expect(Math.abs(own - second), `at ${timeS} s`).toBeLessThan(NEAR_MIN);
    }
  });

  it('plans a way up that keeps the line in the second model, and breaks it where a stop is a minute shorter', () => {
    const planAscent = ascentPlanner(dive.settings, timeline);
    const owed = standings
      .filter(({ depthM }) => depthM > 10)
      .map((standing) => ({ ...standing, schedule: planAscent(ascentStartAt(timeline, figures, sampleOf(standing))) }))
      .filter(({ schedule }) => schedule.stops.length > 0);
    expect(owed.length).toBeGreaterThan(2);
    // At a stop its minutes are under way, which were not begun on a whole one.
    const atStop = owed.filter(({ depthM, schedule }) => schedule.stops[0]!.depthM === depthM);
    for (const { timeS, depthM, diver, schedule } of [owed[0]!, owed[Math.floor(owed.length / 2)]!, ...atStop]) {
      const where = `at ${timeS} s, ${depthM} m: ${said(schedule)}`;
      const ways = schedule.parts.map(({ fromM, toM, minutes, gas }): Way => ({ fromM, toM, minutes, ...gas }));
      expect(worstBar(place, diver, factors, ways, STEP_S), where).toBeLessThan(NEAR_BAR);
      ways.forEach((way, index) => {
        if (way.fromM !== way.toM || way.minutes < 1 || index === 0) return;
        const upTo = ways.findIndex(({ fromM, toM }, later) => later > index && fromM !== toM);
        const shorter = [...ways.slice(0, index), { ...way, minutes: way.minutes - 1 }, ways[upTo]!];
        expect(worstBar(place, diver, factors, shorter, STEP_S), `shorter ${index} ${where}`).toBeGreaterThan(
          -NEAR_BAR,
        );
      });
    }
  });

  it('has at every minute the figures, and the leaders, of the functions that look at one instant', () => {
    for (let i = 0; i < timeline.length; i += 1) {
      const load = loadAt(timeline, i);
      const line = ceilingOnLine(load, factors, figures.anchorM[i]!);
      expect(figures.ceilingM[i]).toBeCloseTo(line.depthM, 9);
      expect(figures.ceilingLeader[i], `ceiling at ${timeline.timeS[i]} s`).toBe(line.leader);
      if (line.depthM > 0) continue;
      const left = noStop(load, breathedAt(timeline, gasAt(timeline, i), timeline.ambientBar[i]!), factors.high);
      if (!(left.minutes <= 99)) continue;
      expect(figures.noStopMin[i]).toBeCloseTo(left.minutes, 6);
      expect(figures.noStopLeader[i], `no-stop time at ${timeline.timeS[i]} s`).toBe(left.leader);
    }
  });

  it('has the same figures wherever it is sampled, though a ceiling comes, peaks and goes between two samples', () => {
    expect(differencesBySampling(day)).toEqual([]);
  });
});

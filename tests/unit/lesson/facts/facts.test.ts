import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { FACT_GROUPS } from '@/lib/lesson/facts/facts';
import { factRow } from '@/lib/lesson/facts/fact-row';
import { judgeAmount } from '@/lib/lesson/questions/judge';
import { subjectOf } from '@/lib/lesson/questions/subject';
import { THIRTY, TWO_DIVES, worldFor } from '../made-lessons';
import { diveOf } from '../../read';

function valueIn(script: string, source: string): number {
  const amount = judgeAmount(source, worldFor(script));
  if (!amount.ok) throw new Error(`${source}: ${amount.what}`);
  return amount.value.value;
}

describe('the facts a lesson may ask for', () => {
  // Worked out by hand from the script: 30 m at 18 m/min, 20 min, 9 m/min to 5 m, 3 min, 9 m/min up.
  it.each([
    ['maxDepthM', 30],
    ['bottomMin', 30 / 18 + 20],
    ['runMin', 30 / 18 + 20 + 25 / 9 + 3 + 5 / 9],
    ['ascentMin', 25 / 9 + 3 + 5 / 9],
    [
      'averageDepthM',
      (15 * (30 / 18) + 30 * 20 + 17.5 * (25 / 9) + 5 * 3 + 2.5 * (5 / 9)) / (30 / 18 + 20 + 25 / 9 + 3 + 5 / 9),
    ],
    ['fastestAscentMMin', 9],
    // Between 3 m and 6 m, each edge a decimetre wide: 6.1 to 5 m, the stay, 5 to 2.9 m.
    ['safetyStopMin', 1.1 / 9 + 3 + 2.1 / 9],
    ['minutesBetween(30 m, 20 m)', 10 / 18 + 20 + 10 / 9],
    ['heldBreathRatio', (1.01325 + 3) / (1.01325 + 0.5)],
    ['diveCount', 1],
    ['pressureAtBar(30 m)', 4.01325],
    ['oxygenBar at arrival', 0.21 * 4.01325],
    ['breathedInertBar at arrival', 0.79 * (4.01325 - 0.0627)],
    ['modM(1.4 bar) at arrival', (1.4 / 0.21 - 1.01325) / 0.1],
    ['eadM at arrival', 30],
    ['halfTimeMin(1)', 5],
    ['gfHighPercent', 85],
    ['surfaceBar', 1.01325],
    ['altitudeM', 0],
    ['firstGasOxygenPercent', 21],
  ])('%s of a dive to 30 m is as worked out by hand', (source, expected) => {
    expect(valueIn(THIRTY, source)).toBeCloseTo(expected, 9);
  });

  it('gives the engine’s own figures at a moment', () => {
    const dive = diveOf(THIRTY);
    const timeline = computeTimeline(dive, 1);
    const figures = figuresOf(timeline, dive.settings);
    const sample = sampleAt(timeline, 15 * 60);
    const now = figuresAt(timeline, figures, sample);
    const at = (fact: string) => valueIn(THIRTY, `${fact} at 15 min`);
    expect(at('ceilingM')).toBe(now.ceiling.depthM);
    expect(at('ceilingLeader')).toBe(now.ceiling.leader);
    expect(at('noStopMin')).toBe(0);
    expect(at('timeToSurfaceMin')).toBe(now.schedule.timeToSurfaceMin);
    expect(at('stopM')).toBe(now.schedule.stops[0]?.depthM ?? 0);
    expect(at('supersaturationPercent')).toBe(now.supersaturation.value * 100);
    expect(at('surfacingSupersaturationPercent')).toBe(now.surfacingSupersaturation.value * 100);
    expect(at('creditedNoStopMin')).toBe(now.creditedNoStopMin);
  });

  it('tells what stops were asked for, and that they were left out', () => {
    expect(valueIn(THIRTY, 'requiredStopMin')).toBeGreaterThanOrEqual(valueIn(THIRTY, 'stopsMin at leaving'));
    expect(valueIn(THIRTY, 'deepestCeilingM')).toBe(valueIn(THIRTY, 'highest ceilingM'));
    expect(valueIn(THIRTY, 'count(stop-owed)')).toBe(1);
    expect(valueIn(THIRTY, 'ceilingM at (firstMin(ceiling-clears))')).toBeGreaterThan(0);
    const early = THIRTY.replace('stay 20 min', 'stay 5 min');
    expect(valueIn(early, 'requiredStopMin')).toBe(0);
    expect(valueIn(early, 'deepestStopM')).toBe(0);
    expect(valueIn(early, 'firstMin(ceiling-clears)')).toBe(Infinity);
  });

  it('fills a compartment by half in a half-time, once at depth', () => {
    // Haldane: whatever gap is left on arrival is half as large after one half-time, a quarter after two.
    const left = (after: string) =>
      100 -
      valueIn(
        'gas: air\ndescend to 20 m at 20 m/min\nstay 60 min\nascend to surface at 9 m/min\n',
        `filledPercent(1) at ${after}`,
      );
    expect(left('5 min after arrival')).toBeCloseTo(left('arrival') / 2, 6);
    expect(left('10 min after arrival')).toBeCloseTo(left('arrival') / 4, 6);
  });

  it('tells a day of two dives apart', () => {
    expect(valueIn(TWO_DIVES, 'diveCount')).toBe(2);
    expect(valueIn(TWO_DIVES, 'surfaceIntervalMin')).toBeCloseTo(60, 9);
    expect(valueIn(TWO_DIVES, 'runMin in dive 1')).toBeCloseTo(23, 9);
    expect(valueIn(TWO_DIVES, 'nextNoStopMin(18 m) at surfacing in dive 1')).toBeLessThan(
      valueIn(TWO_DIVES, 'freshNoStopMin(18 m)'),
    );
    expect(valueIn(TWO_DIVES, 'noFlyMin at surfacing')).toBeGreaterThanOrEqual(18 * 60);
  });

  it('takes the bottom to be left at the end of the last step near the greatest depth that does not climb', () => {
    const stepped =
      'descend to 30 m at 18 m/min\nstay 5 min\nascend to 28 m at 9 m/min\nstay 5 min\nascend to 20 m at 9 m/min\nstay 5 min\nascend to surface at 9 m/min\n';
    expect(valueIn(stepped, 'bottomMin')).toBeCloseTo(30 / 18 + 5 + 2 / 9 + 5, 9);
  });

  it('says why a fact has no value', () => {
    const under = {
      ...worldFor(THIRTY),
      subject: subjectOf({
        settings: defaultSettings(),
        steps: [{ kind: 'descend', toM: 30, durationS: 100 }],
        lines: [],
      }),
    };
    expect(judgeAmount('runMin', under)).toMatchObject({
      ok: false,
      cause: 'no value',
      what: 'This dive does not come to the surface.',
    });
    expect(judgeAmount('cylinderBar(1) at arrival', under)).toMatchObject({
      ok: false,
      what: 'The script lists no cylinders.',
    });
    expect(judgeAmount('maxDepthM', worldFor('gas: air\n'))).toMatchObject({
      ok: false,
      what: 'This script does not leave the surface.',
    });
  });

  it('has every fact in the guide for authors, as it is', () => {
    const guide = readFileSync('content/lessons/README.md', 'utf8').replaceAll(/ +/g, ' ');
    const rows = FACT_GROUPS.flatMap(({ facts }) => facts.map(factRow));
    expect(rows.filter((row) => !guide.includes(row))).toEqual([]);
  });

  it('has one meaning and one name for each fact', () => {
    const names = FACT_GROUPS.flatMap(({ facts }) => facts.map(({ name }) => name));
    expect(new Set(names).size).toBe(names.length);
  });
});

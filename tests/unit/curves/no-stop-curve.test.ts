import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { curveSite, depthLadder, leftBy, rested } from '@/lib/curves/curve-site';
import { noStopCurve, type NoStopConditions } from '@/lib/curves/no-stop-curve';
import type { Settings } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { diveOf, down, settingsWith, stay } from './scripted';

const conditions = (some: Partial<Settings>, descentMMin?: number): NoStopConditions => {
  const settings = settingsWith(some);
  return {
    site: curveSite(settings),
    tissues: rested(settings),
    gas: settings.gas,
    gf: settings.gradientFactors.high,
    descentMMin,
  };
};

/** The engine's own no-stop time on arriving at a depth in a dive. */
function onArrival(some: Partial<Settings>, depthM: number, mMin: number) {
  const dive = diveOf(some, down(depthM, mMin));
  const timeline = computeTimeline(dive, 1e9);
  const figures = figuresOf(timeline, dive.settings);
  const last = timeline.length - 1;
  return { minutes: figures.noStopMin[last]!, leader: figures.noStopLeader[last]! };
}

const CASES: [string, Partial<Settings>][] = [
  ['on air', {}],
  ['on 32%', { gas: { o2: 0.32, he: 0 } }],
  ['on trimix', { gas: { o2: 0.18, he: 0.45 } }],
  [
    'at 2400 m, arrived from the sea an hour ago',
    { altitudeM: 2400, start: { kind: 'arrived', fromM: 0, agoS: 3600 } },
  ],
  ['in fresh water under variant A', { water: 'fresh', model: { variant: 'A', first: '1', respiratoryQuotient: 0.9 } }],
];

describe('the no-stop curve', () => {
  it.each(CASES)('is what the engine says on arrival, way down counted in, %s', (_, some) => {
    const curve = noStopCurve(conditions(some, 18), depthLadder(12, 60, 4));
    curve.depthM.forEach((depthM, i) => {
      const engine = onArrival(some, depthM, 18);
      if (engine.minutes === 0) expect(curve.minutes[i]).toBe(0);
      else expect(curve.minutes[i]!).toBeCloseTo(depthM / 18 + engine.minutes, 6);
      expect(curve.leader[i]).toBe(engine.leader);
    });
  });

  it.each(CASES)(
    'from an instant arrival is what the engine says after a way down that takes no time, %s',
    (_, some) => {
      const curve = noStopCurve(conditions(some), depthLadder(12, 60, 4));
      curve.depthM.forEach((depthM, i) => {
        const { minutes, leader } = onArrival(some, depthM, 1e9);
        expect(curve.minutes[i]!).toBeCloseTo(minutes, 5);
        expect(curve.leader[i]).toBe(leader);
      });
    },
  );

  it('is shorter after a dive, and recovers with time at the surface', () => {
    const before = diveOf({}, down(30, 18), stay(20), { kind: 'ascend', toM: 0, durationS: 240 });
    const at18 = (surfaceMin: number) =>
      noStopCurve({ ...conditions({}), tissues: leftBy(before, surfaceMin) }, [18]).minutes[0]!;
    expect(at18(30)).toBeLessThan(at18(120));
    expect(at18(120)).toBeLessThan(noStopCurve(conditions({}), [18]).minutes[0]!);
  });

  it('never ends in the shallows, where no compartment can reach its limit', () => {
    const { minutes, leader } = noStopCurve(conditions({}), [3]);
    expect(minutes[0]).toBe(Infinity);
    expect(leader[0]).toBe(0);
  });
});

describe('what an earlier dive left', () => {
  it('is what the engine has after the dive and the interval', () => {
    const before = diveOf({}, down(30, 18), stay(20), { kind: 'ascend', toM: 0, durationS: 240 });
    const whole = computeTimeline({ ...before, steps: [...before.steps, { kind: 'interval', durationS: 3600 }] }, 10);
    const left = leftBy(before, 60);
    left.nitrogenBar.forEach((bar, c) => expect(bar).toBeCloseTo(whole.nitrogenBar[(whole.length - 1) * 16 + c]!, 10));
  });

  it('of no interval is what the dive ended with', () => {
    const before = diveOf({}, down(30, 18), stay(20));
    expect(leftBy(before, 0).nitrogenBar[0]).toBeGreaterThan(2);
  });
});

describe('a ladder of depths', () => {
  it('reaches its end', () => {
    const ladder = depthLadder(5, 60, 0.1);
    expect(ladder).toHaveLength(551);
    expect(ladder[550]).toBeCloseTo(60, 9);
  });
  it('of one depth is that depth', () => expect([...depthLadder(30, 30, 1)]).toEqual([30]));
  it.each([
    [5, 60, 0],
    [60, 5, 1],
    [5, 60, NaN],
  ])('from %f to %f by %f is refused', (fromM, toM, stepM) =>
    expect(() => depthLadder(fromM, toM, stepM)).toThrow(RangeError),
  );
});

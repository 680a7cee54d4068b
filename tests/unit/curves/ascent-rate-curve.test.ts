import { describe, expect, it } from 'vitest';
import { ascentPlanner } from '@/lib/ascent/plan/schedule';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import { ascentRateCurve } from '@/lib/curves/ascent-rate-curve';
import { bottomOf, type BottomPhase } from '@/lib/curves/bottom-phase';
import { computeTimeline, tissuesAt } from '@/lib/dive/timeline';
import { diveOf, down, settingsWith, stay } from './scripted';

const phase = (depthM: number, minutes: number, some = {}): BottomPhase => ({
  settings: settingsWith(some),
  depthM,
  minutes,
  descentMMin: 18,
});
const curve = (bottom: BottomPhase, rates: number[]) => {
  const { site, end } = bottomOf(bottom);
  return ascentRateCurve(bottom.settings, site, end, rates);
};

describe('a bottom phase', () => {
  it('ends with what the engine has after the same steps', () => {
    const timeline = computeTimeline(diveOf({ gas: { o2: 0.18, he: 0.45 } }, down(60, 18), stay(20)), 1);
    const expected = tissuesAt(timeline, timeline.length - 1);
    const { end, arrival } = bottomOf(phase(60, 20, { gas: { o2: 0.18, he: 0.45 } }));
    end.nitrogenBar.forEach((bar, c) => expect(bar).toBeCloseTo(expected.nitrogenBar[c]!, 10));
    end.heliumBar.forEach((bar, c) => expect(bar).toBeCloseTo(expected.heliumBar[c]!, 10));
    expect(arrival.heliumBar[0]!).toBeLessThan(end.heliumBar[0]!);
  });

  it.each([{ ...phase(0, 10) }, { ...phase(30, -1) }, { ...phase(30, NaN) }, { ...phase(30, 10), descentMMin: 0 }])(
    'that is no dive is refused',
    (bottom) => expect(() => bottomOf(bottom)).toThrow(RangeError),
  );
});

describe('ascent rate', () => {
  it('on leaving 40 m after 9 min on air under 85/85: free of stops at 9 m/min, a ceiling of 0.4 m at 30 m/min', () => {
    // Nine minutes from leaving the surface, going down at 18 m/min.
    const [slow, fast] = curve(phase(40, 9 - 40 / 18), [9, 30]);
    expect(slow!.direct.ceilingM).toBe(0);
    expect(slow!.required).toMatchObject({ stops: 0, stopMin: 0, deepestStopM: 0 });
    expect(fast!.direct.ceilingM).toBeCloseTo(0.4, 1);
  });

  it('on surfacing gives the supersaturation and ceiling the engine gives for that dive', () => {
    for (const rate of [6, 9, 18, 30]) {
      const dive = diveOf({}, down(36, 18), stay(12), { kind: 'ascend', toM: 0, durationS: (36 * 60) / rate });
      const timeline = computeTimeline(dive, 5);
      const figures = figuresOf(timeline, dive.settings);
      const now = figuresAt(timeline, figures, timeline.length - 1);
      const [point] = curve(phase(36, 12), [rate]);
      expect(point!.direct.surfacingSupersaturation).toBeCloseTo(now.surfacingSupersaturation.value, 9);
      expect(point!.direct.leader).toBe(now.surfacingSupersaturation.leader);
      expect(point!.direct.ceilingM).toBeCloseTo(now.ceilingAtHigh.depthM, 9);
    }
  });

  it('requires the stops that the planner gives at that rate', () => {
    const bottom = phase(45, 25, { gradientFactors: { low: 0.3, high: 0.8 } });
    const { site, end } = bottomOf(bottom);
    for (const point of curve(bottom, [3, 9, 18])) {
      const { stops, timeToSurfaceMin } = ascentPlanner(
        { ...bottom.settings, plan: { ...bottom.settings.plan, ascentMMin: point.rateMMin } },
        site,
      )(end);
      expect(point.required.stops).toBe(stops.length);
      expect(point.required.deepestStopM).toBe(stops[0]!.depthM);
      expect(point.required.timeToSurfaceMin).toBe(timeToSurfaceMin);
      expect(point.required.stopMin).toBe(stops.reduce((sum, stop) => sum + stop.minutes, 0));
    }
  });

  it('leaves more gas over the faster it is, after a short deep dive', () => {
    const values = curve(phase(40, 9), [6, 9, 12, 18, 30, 60]).map(({ direct }) => direct.surfacingSupersaturation);
    expect([...values].sort((one, other) => one - other)).toEqual(values);
  });

  it('of nothing is refused', () => expect(() => curve(phase(40, 9), [0])).toThrow(RangeError));
});

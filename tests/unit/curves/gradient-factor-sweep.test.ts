import { describe, expect, it } from 'vitest';
import { creditedNoStopMin } from '@/lib/ascent/credited-no-stop';
import { ascentPlanner } from '@/lib/ascent/plan/schedule';
import { bottomOf, type BottomPhase } from '@/lib/curves/bottom-phase';
import { gradientFactorGrid, gradientFactorSweep, type SweepFigure } from '@/lib/curves/gradient-factor-sweep';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { settingsWith } from './scripted';

const deep: BottomPhase = { settings: settingsWith(), depthM: 45, minutes: 30, descentMMin: 18 };
const lows = [0.2, 0.4, 0.6];
const highs = [0.5, 0.7, 0.9, 1];
const sweep = (figure: SweepFigure, bottom = deep) => gradientFactorGrid({ bottom, figure, lows, highs });

describe('a sweep over gradient factors', () => {
  it('gives the time to surface that a planner set to each pair gives', () => {
    const { values } = sweep('timeToSurface');
    const { site, end } = bottomOf(deep);
    highs.forEach((high, row) =>
      lows.forEach((low, column) => {
        const value = values[row * lows.length + column]!;
        if (low > high) expect(value).toBeNaN();
        else
          expect(value).toBe(
            ascentPlanner({ ...deep.settings, gradientFactors: { low, high } }, site)(end).timeToSurfaceMin,
          );
      }),
    );
  });

  it('has no figure where low would be above high', () => expect(sweep('timeToSurface').values[2]).toBeNaN());

  it('gives a no-stop time that the low gradient factor has no say in', () => {
    const { values } = sweep('noStop');
    const { site, arrival } = bottomOf(deep);
    highs.forEach((high, row) => {
      const [own] = noStopCurve({ site, tissues: arrival, gas: arrival.gas, gf: high }, [45]).minutes;
      expect(values[row * 3]).toBeCloseTo(own!, 12);
      expect(values[row * 3 + 1]).toBe(values[row * 3]);
    });
  });

  it('gives a no-stop time with credit in which it has', () => {
    const { values } = sweep('creditedNoStop');
    const { site, arrival } = bottomOf(deep);
    const gradientFactors = { low: 0.4, high: 0.9 };
    expect(values[2 * 3 + 1]).toBe(creditedNoStopMin({ ...deep.settings, gradientFactors }, site, arrival));
    // Whether a dive needs stops is decided by `high`; `low` can only bring the need forward.
    expect(values[2 * 3]).toBeLessThanOrEqual(values[2 * 3 + 2]!);
  });

  it('tells how far it has come after each row, and can be left at any', () => {
    const running = gradientFactorSweep({ bottom: deep, figure: 'timeToSurface', lows, highs });
    expect(running.next().value).toEqual({ rowsDone: 1, rows: 4 });
    expect(running.next().value).toEqual({ rowsDone: 2, rows: 4 });
    running.return(undefined as never);
    expect(running.next().done).toBe(true);
  });

  it('of no pairs is an empty grid', () =>
    expect(gradientFactorGrid({ bottom: deep, figure: 'noStop', lows: [], highs: [] }).values).toHaveLength(0));
  it('of no dive is refused', () => expect(() => sweep('noStop', { ...deep, depthM: -3 })).toThrow(/depth/));
  it('can be asked for across a worker’s border', () => {
    const request = { bottom: deep, figure: 'timeToSurface' as const, lows, highs };
    expect(gradientFactorGrid(structuredClone(request))).toEqual(gradientFactorGrid(request));
  });
});

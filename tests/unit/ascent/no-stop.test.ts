import { describe, expect, it, vi } from 'vitest';
import { breathedAt } from '@/lib/ascent/breathed';
import { figuresOf, loadAt } from '@/lib/ascent/figures';
import type { Load } from '@/lib/ascent/ceiling';
import { compartmentNoStopMin, noStop, surfaceMarginBar, type Breathed } from '@/lib/ascent/no-stop';
import { computeTimeline } from '@/lib/dive/timeline';
import { diveOf, down, stay } from '../rules/made-dives';
import { plainLoad } from './plain-model';

const nitrogen = (nitrogenBar: number) => ({ nitrogenBar, heliumBar: 0 });

describe('no-stop time in a compartment of 10 min that tolerates 2 bar at the surface', () => {
  it('from 1 bar breathing 3 bar is one half-time', () =>
    expect(noStop(plainLoad(1), nitrogen(3), 1)).toEqual({ minutes: expect.closeTo(10, 12), leader: 1 }));
  it('from 1 bar breathing 7/3 bar is two half-times', () =>
    expect(noStop(plainLoad(1), nitrogen(7 / 3), 1).minutes).toBeCloseTo(20, 12));
  it('under 50% ends at 1.5 bar: from 1 bar breathing 2 bar, one half-time', () =>
    expect(noStop(plainLoad(1), nitrogen(2), 0.5).minutes).toBeCloseTo(10, 12));
  it('never ends while no more than the limit is breathed', () =>
    expect(noStop(plainLoad(1), nitrogen(2), 1)).toEqual({ minutes: Infinity, leader: 0 }));
  it('is 0 once the limit is passed', () => expect(noStop(plainLoad(2.1), nitrogen(3), 1).minutes).toBe(0));
  it('is not capped on nitrogen', () =>
    expect(noStop(plainLoad(1), nitrogen(2 + 1e-4), 1).minutes).toBeCloseTo(10 * Math.log2(10001), 6));
});

describe('no-stop time with helium', () => {
  it('from nothing, breathing helium alone, runs by helium’s half-time of 5 min', () => {
    expect(noStop(plainLoad(0), { nitrogenBar: 0, heliumBar: 4 }, 1).minutes).toBeCloseTo(5, 6);
  });

  it('of both gases ends when their sum is at the limit', () => {
    // Nitrogen 2 − 2^(−t/10)·1 and helium 1 − 2^(−t/5)·1: with x = 2^(−t/10), 3 − x − x² = 2, x = (√5 − 1)/2.
    const x = (Math.sqrt(5) - 1) / 2;
    expect(noStop(plainLoad(1), { nitrogenBar: 2, heliumBar: 1 }, 1).minutes).toBeCloseTo(-10 * Math.log2(x), 6);
  });

  it('ends where the limit is first passed, though it is kept again within the same minute as nitrogen goes', () => {
    // Nitrogen 1.94·H·x from breathing none and helium H·(1 − x²), with x = 2^(−t/10): H·(1 + 1.94·x − x²) = 2.
    const heliumBar = 2 / 1.9405;
    const x = (1.94 + Math.sqrt(1.94 ** 2 - 4 * (2 / heliumBar - 1))) / 2;
    const minutes = -10 * Math.log2(x);
    expect(minutes).toBeGreaterThan(0.1);
    expect(noStop(plainLoad(1.94 * heliumBar), { nitrogenBar: 0, heliumBar }, 1).minutes).toBeCloseTo(minutes, 6);
    const over = (later: number) => heliumBar * (1 + 1.94 * 2 ** (-later / 10) - 2 ** (-later / 5)) - 2;
    expect([over(0), over(0.4), over(1)].map(Math.sign)).toEqual([-1, 1, -1]);
  });

  it('is not searched for where all that a tissue could come to hold is tolerated', () => {
    const exp = vi.spyOn(Math, 'exp');
    const looks = (load: Load, breathed: Breathed) => {
      exp.mockClear();
      expect(noStop(load, breathed, 1).minutes).toBe(Infinity);
      return exp.mock.calls.length;
    };
    // 2 bar are tolerated: a look now takes one power of each gas, a search those of its step besides.
    expect(looks(plainLoad(1), { nitrogenBar: 1.4, heliumBar: 0.6 })).toBe(2 * 16);
    expect(looks(plainLoad(1.3, 0.6), { nitrogenBar: 0.4, heliumBar: 0.2 })).toBe(2 * 16);
    expect(looks(plainLoad(1), { nitrogenBar: 1.4, heliumBar: 0.6 + 1e-9 })).toBe(4 * 16);
    exp.mockRestore();
  });

  it('later than the search looks counts as never', () => {
    const breathed = { nitrogenBar: 2 + 1e-4, heliumBar: 1e-9 };
    expect(noStop(plainLoad(1), breathed, 1).minutes).toBe(Infinity);
    expect(noStop(plainLoad(1), breathed, 1, 200).minutes).toBeCloseTo(10 * Math.log2(10001), 2);
  });
});

describe('no-stop time over a long stay on helium', () => {
  it('is told from the moment it is within reach, and falls a minute a minute', () => {
    // 21/35 at 11 m: the limit is broken only after more than 99 min there.
    const gas = { o2: 0.21, he: 0.35 };
    const dive = diveOf([down(11, 60), stay(240 * 60)], { gas, gradientFactors: { low: 0.85, high: 0.85 } });
    const timeline = computeTimeline(dive, 60);
    const { noStopMin, ceilingM } = figuresOf(timeline, dive.settings);
    const high = dive.settings.gradientFactors.high;
    const told: number[] = [];
    for (let i = 2; i < timeline.length && ceilingM[i] === 0; i += 1) {
      const alone = noStop(loadAt(timeline, i), breathedAt(timeline, gas, timeline.ambientBar[i]!), high);
      expect(noStopMin[i] === Infinity ? 1e9 : noStopMin[i]).toBeCloseTo(
        alone.minutes === Infinity ? 1e9 : alone.minutes,
        4,
      );
      if (noStopMin[i] !== Infinity) told.push(noStopMin[i]!);
    }
    expect(noStopMin[2]).toBe(Infinity);
    expect(told.length).toBeGreaterThan(90);
    told.slice(1).forEach((minutes, i) => expect(told[i]! - minutes).toBeCloseTo(1, 6));
  });

  it('is not told from the first moment of helium, where no tissue holds any yet, sooner than from the next', () => {
    // Two hours after arriving at altitude, at the surface on a mixture rich in helium: the limit is broken only after more than 99 min at the surface.
    const gas = { o2: 0.21, he: 0.79 };
    const dive = diveOf([stay(60 * 60)], {
      gas,
      altitudeM: 2234,
      start: { kind: 'arrived', fromM: 0, agoS: 2 * 60 * 60 },
      gradientFactors: { low: 0.1, high: 0.14 },
    });
    const { noStopMin } = figuresOf(computeTimeline(dive, 60), dive.settings);
    expect([...noStopMin.slice(0, 3)]).toEqual([Infinity, Infinity, Infinity]);
    expect(noStopMin.at(-1)).toBeLessThan(99);
  });
});

describe('one compartment', () => {
  it('may be passed over where it can’t be the first', () =>
    expect(compartmentNoStopMin(plainLoad(1), nitrogen(3), 1, 0, 2)).toBe(Infinity));
  it('is as far from its limit as the tension is from twice the surface', () =>
    expect(surfaceMarginBar(plainLoad(1.5), 1, 0)).toBeCloseTo(0.5, 12));
});

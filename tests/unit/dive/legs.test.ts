import { describe, expect, it } from 'vitest';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Step } from '@/lib/dive/dive';
import { legsOf } from '@/lib/dive/legs';

const NITROX = { o2: 0.32, he: 0 };
const RICH = { o2: 0.5, he: 0 };
const AIR = { o2: 0.21, he: 0 };
const of = (...steps: Step[]) => legsOf({ settings: { ...defaultSettings(), gas: NITROX }, steps, lines: [] });
const down: Step = { kind: 'descend', toM: 20, durationS: 60 };
const stay: Step = { kind: 'stay', durationS: 600 };
const up: Step = { kind: 'ascend', toM: 0, durationS: 120 };
const interval: Step = { kind: 'interval', durationS: 3600 };
const onto = (gas: typeof AIR): Step => ({ kind: 'switch', gas });

describe('the legs of a dive', () => {
  it('follow each other on one clock, each from where the last one ended', () => {
    const { legs, endS } = of(down, stay, up);
    expect(legs).toMatchObject([
      { startS: 0, endS: 60, fromM: 0, toM: 20, step: 0 },
      { startS: 60, endS: 660, fromM: 20, toM: 20, step: 1 },
      { startS: 660, endS: 780, fromM: 20, toM: 0, step: 2 },
    ]);
    expect(endS).toBe(780);
    expect(legs.every(({ interval: between, diveNumber }) => !between && diveNumber === 0)).toBe(true);
  });

  it('breathe the gas switched to from there on, each gas listed once', () => {
    const { legs, gases } = of(down, onto(RICH), stay, onto(NITROX), up);
    expect(gases).toEqual([NITROX, RICH]);
    expect(legs.map(({ gas, step }) => [gas, step])).toEqual([
      [0, 0],
      [1, 2],
      [0, 4],
    ]);
  });

  it('breathe air between dives, and begin the next dive on the gas of the first', () => {
    const { legs, gases } = of(down, onto(RICH), up, interval, down, up, interval);
    expect(legs.map(({ gas }) => gases[gas])).toEqual([NITROX, RICH, AIR, NITROX, NITROX, AIR]);
    expect(legs.map(({ diveNumber }) => diveNumber)).toEqual([0, 0, 0, 1, 1, 1]);
    expect(legs.map((leg) => leg.interval)).toEqual([false, false, true, false, false, true]);
  });

  it('count the next dive once, also where it begins with a change of gas or follows two intervals', () => {
    expect(of(down, up, interval, onto(RICH), down, up).legs.map(({ diveNumber }) => diveNumber)).toEqual([
      0, 0, 0, 1, 1,
    ]);
    expect(of(down, up, interval, interval, down, up).legs.map(({ diveNumber }) => diveNumber)).toEqual([
      0, 0, 0, 0, 1, 1,
    ]);
    const switched = of(down, up, interval, onto(RICH), onto(AIR), down, up, interval, down);
    expect(switched.legs.map(({ diveNumber }) => diveNumber)).toEqual([0, 0, 0, 1, 1, 1, 2]);
    expect(switched.gases[switched.legs[3]!.gas]).toEqual(AIR);
  });

  it('of a dive in which no time passes are one of no length at the surface', () => {
    expect(of(onto(RICH))).toMatchObject({
      legs: [{ startS: 0, endS: 0, fromM: 0, toM: 0, gas: 1, step: 0, diveNumber: 0, interval: false }],
      endS: 0,
    });
  });
});

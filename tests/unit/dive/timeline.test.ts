import { describe, expect, it } from 'vitest';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, Step } from '@/lib/dive/dive';
import { computeTimeline, gasAt, sampleAt, siteOf, tissuesAt } from '@/lib/dive/timeline';
import { compartments } from '@/lib/tissue/coefficients';

const dive = (...steps: Step[]): Dive => ({ settings: defaultSettings(), steps, lines: [] });
const down: Step = { kind: 'descend', toM: 30, durationS: 90 };
const stay: Step = { kind: 'stay', durationS: 600 };
const up: Step = { kind: 'ascend', toM: 0, durationS: 200 };
const interval: Step = { kind: 'interval', durationS: 1000 };

describe('the samples of a timeline', () => {
  it('are the multiples of the step, every change and the end', () => {
    const { timeS, depthM, leg } = computeTimeline(dive(down, { kind: 'stay', durationS: 45 }), 60);
    expect([...timeS]).toEqual([0, 60, 90, 120, 135]);
    expect([...depthM]).toEqual([0, 20, 30, 30, 30]);
    expect([...leg]).toEqual([0, 0, 1, 1, 1]);
  });

  it('lie on a straight line along each way, up and down', () => {
    const { timeS, depthM, ambientBar } = computeTimeline(dive(down, { kind: 'ascend', toM: 10, durationS: 80 }), 30);
    expect([...timeS]).toEqual([0, 30, 60, 90, 120, 150, 170]);
    const depths = [0, 10, 20, 30, 22.5, 15, 10];
    depths.forEach((depth, i) => {
      expect(depthM[i]).toBeCloseTo(depth, 12);
      expect(ambientBar[i]).toBeCloseTo(1.01325 + depth / 10, 12);
    });
  });

  it('at a change that falls on a multiple are one, which belongs to what follows', () => {
    const { timeS, leg } = computeTimeline(dive({ ...down, durationS: 60 }, stay), 60);
    expect([...timeS.slice(0, 3)]).toEqual([0, 60, 120]);
    expect([...leg.slice(0, 3)]).toEqual([0, 1, 1]);
  });

  it('lie further apart in surface intervals if asked to', () => {
    const { timeS } = computeTimeline(dive(up, interval), 100, { intervalEveryS: 500 });
    expect([...timeS]).toEqual([0, 100, 200, 500, 1000, 1200]);
  });

  it('of a dive without steps are at the surface', () => {
    const { timeS, depthM, nitrogenBar } = computeTimeline(dive(), 1);
    expect([...timeS]).toEqual([0, 0]);
    expect([...depthM]).toEqual([0, 0]);
    expect(nitrogenBar[16]).toBeCloseTo(0.7509345, 12);
  });

  it('follow a change too quick for the clock', () => {
    const timeline = computeTimeline(dive(down, { kind: 'descend', toM: 30 + 1e-12, durationS: 1e-15 }, stay), 60);
    expect([...timeline.depthM].every(Number.isFinite)).toBe(true);
    expect([...timeline.nitrogenBar].every(Number.isFinite)).toBe(true);
  });

  it.each([0, -1, NaN, Infinity])('can’t be %f seconds apart', (everyS) => {
    expect(() => computeTimeline(dive(down), everyS)).toThrow(RangeError);
    expect(() => computeTimeline(dive(down), 1, { intervalEveryS: everyS })).toThrow(RangeError);
  });

  it('are found by time', () => {
    const timeline = computeTimeline(dive(down, stay), 60);
    expect(sampleAt(timeline, 59.9)).toBe(0);
    expect(sampleAt(timeline, 60)).toBe(1);
    expect(sampleAt(timeline, -5)).toBe(0);
    expect(sampleAt(timeline, 1e9)).toBe(timeline.length - 1);
  });
});

describe('pressures', () => {
  it('at 30 m in reference water are 1.01325 + 3 bar', () => {
    const { ambientBar } = computeTimeline(dive(down, stay), 60);
    expect(ambientBar.at(-1)).toBeCloseTo(4.01325, 12);
  });

  it('follow the altitude and the water', () => {
    const site = siteOf({ ...dive(), settings: { ...defaultSettings(), altitudeM: 2000, water: 'fresh' } });
    // 79495 Pa at 2000 m: ISO 2533:1975, from memory.
    expect(site.surfaceBar).toBeCloseTo(0.79495, 3);
    expect(site.barPerMetre).toBeCloseTo(0.0980665, 9);
  });
});

describe('tensions', () => {
  it('after a descent and a stay are Schreiner’s and then Haldane’s, worked for the 5 min compartment', () => {
    const timeline = computeTimeline(dive(down, stay), 7);
    // k = ln 2/5; breathed 0.7509345 bar at the surface and 3.1209345 bar at 30 m, rising 1.58 bar/min for 1.5 min.
    const k = Math.LN2 / 5;
    const arrived = 0.7509345 + 1.58 * (1.5 - 1 / k) + (1.58 / k) * Math.exp(-1.5 * k);
    const after = 3.1209345 + (arrived - 3.1209345) * Math.exp(-10 * k);
    expect(timeline.nitrogenBar[sampleAt(timeline, 90) * 16]).toBeCloseTo(arrived, 10);
    expect(tissuesAt(timeline, timeline.length - 1).nitrogenBar[0]).toBeCloseTo(after, 10);
    expect(after).toBeCloseTo(2.586, 4);
  });

  it('of helium follow its own half-times', () => {
    const trimix = { ...dive({ kind: 'switch', gas: { o2: 0.2, he: 0.4 } }, stay) };
    const timeline = computeTimeline(trimix, 60);
    const breathed = (1.01325 - 0.0627) * 0.4;
    expect(tissuesAt(timeline, timeline.length - 1).heliumBar[0]).toBeCloseTo(
      breathed * (1 - Math.exp((-Math.LN2 / 1.88) * 10)),
      10,
    );
    expect(timeline.hasHelium).toBe(true);
    expect(gasAt(timeline, 1)).toEqual({ o2: 0.2, he: 0.4 });
  });

  it('begin anew at a leg where the instrument was swapped', () => {
    const timeline = computeTimeline(dive(down, stay, up, interval, down), 60, { freshAtLegs: [4] });
    expect(tissuesAt(timeline, sampleAt(timeline, 1890)).nitrogenBar[8]).toBeCloseTo(0.7509345, 12);
  });

  it('may be worked out with other half-times and limits than the published ones', () => {
    const slow = compartments('C', '1b');
    const timeline = computeTimeline(dive(down, stay), 60, {
      compartments: { ...slow, nitrogenK: slow.nitrogenK.map((k) => k / 2) },
    });
    const plain = computeTimeline(dive(down, stay), 60);
    expect(timeline.nitrogenBar.at(-16)!).toBeLessThan(plain.nitrogenBar.at(-16)!);
  });
});

describe('memory used again', () => {
  it('is the same memory where it is large enough, and leaves nothing of the old dive', () => {
    const long = computeTimeline(dive(down, stay, up), 1);
    const memory = long.nitrogenBar.buffer;
    const short = computeTimeline(dive(down, up), 1, { reuse: long });
    expect(short.nitrogenBar.buffer).toBe(memory);
    expect([...short.nitrogenBar]).toEqual([...computeTimeline(dive(down, up), 1).nitrogenBar]);
  });

  it('is exchanged for more where it is too small', () => {
    const short = computeTimeline(dive(down), 1);
    const long = computeTimeline(dive(down, stay), 1, { reuse: short });
    expect([...long.nitrogenBar]).toEqual([...computeTimeline(dive(down, stay), 1).nitrogenBar]);
  });
});

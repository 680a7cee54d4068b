import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { conventionEffect, modelNoStopCurve } from '@/lib/curves/model-curves';
import { modelTimeline } from '@/lib/curves/model-timeline';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { HALDANE_1908 } from '@/lib/tissue/models/haldane-1908';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';
import { modelNoStopMin } from '@/lib/tissue/models/model-figures';
import { WORKMAN_1965 } from '@/lib/tissue/models/workman-1965';
import { zhL16 } from '@/lib/tissue/models/zh-l16';
import { AIR } from '@/lib/physics/gas';
import { diveOf, down, stay } from './scripted';

const SEA = { surfaceBar: 1.01325, barPerMetre: 0.1 };
const twoDives = diveOf(
  { gradientFactors: { low: 1, high: 1 } },
  down(36, 18),
  stay(25),
  { kind: 'ascend', toM: 9, durationS: 180 },
  { kind: 'switch', gas: { o2: 0.5, he: 0 } },
  stay(5),
  { kind: 'ascend', toM: 0, durationS: 60 },
  { kind: 'interval', durationS: 3600 },
  down(24, 18),
  stay(30),
);

describe('a model’s timeline', () => {
  it('of ZH-L16C is the engine’s without gradient factors', () => {
    const timeline = computeTimeline(twoDives, 20);
    const figures = figuresOf(timeline, twoDives.settings);
    const own = modelTimeline(zhL16('C'), timeline);
    for (let i = 0; i < timeline.length; i += 1) {
      expect(own.ceilingM[i]!).toBeCloseTo(figures.ceilingM[i]!, 9);
      expect(own.ceilingLeader[i]).toBe(figures.ceilingLeader[i]);
      if (figures.noStopMin[i] === Infinity) expect(own.noStopMin[i]).toBe(Infinity);
      else expect(own.noStopMin[i]!).toBeCloseTo(figures.noStopMin[i]!, 6);
    }
    own.tensionsBar.forEach((bar, at) => expect(bar).toBeCloseTo(timeline.nitrogenBar[at]!, 10));
  });

  it('of Haldane’s five compartments has five tensions a sample, worked by hand after a square dive', () => {
    const timeline = computeTimeline(diveOf({}, { kind: 'descend', toM: 30, durationS: 1e-7 }, stay(20)), 600);
    const own = modelTimeline(HALDANE_1908, timeline);
    const last = own.tensionsBar.subarray((timeline.length - 1) * 5);
    // Dry lungs: 0.79 · 4.01325 breathed, 0.79 · 1.01325 to begin with; 20 min are one half-time of the third.
    expect(last).toHaveLength(5);
    expect(last[2]).toBeCloseTo((0.79 * (4.01325 + 1.01325)) / 2, 6);
    expect(last[1]).toBeCloseTo(0.79 * (4.01325 - 3 / 4), 6);
  });

  it('begins arrived from lower down with more in the slow compartments', () => {
    const start = { kind: 'arrived' as const, fromM: 0, agoS: 7200 };
    const lake = computeTimeline(diveOf({ altitudeM: 2400, start }, down(20, 18)), 600);
    const own = modelTimeline(WORKMAN_1965, lake);
    expect(own.tensionsBar[8]!).toBeGreaterThan(own.tensionsBar[0]!);
  });

  it('refuses helium and tensions of other compartments, saying which model and why', () => {
    const trimix = computeTimeline(diveOf({ gas: { o2: 0.18, he: 0.45 } }, down(30, 18)), 600);
    expect(() => modelTimeline(HALDANE_1908, trimix)).toThrow('Haldane 1908 knows nitrogen only');
    const start = {
      kind: 'tensions' as const,
      nitrogenBar: new Array<number>(16).fill(1),
      heliumBar: new Array<number>(16).fill(0),
    };
    const carried: Timeline = computeTimeline(diveOf({ start }, down(30, 18)), 600);
    expect(() => modelTimeline(WORKMAN_1965, carried)).toThrow('Workman 1965 has its own compartments');
  });
});

describe('models side by side', () => {
  it('give each its own no-stop time at every depth', () => {
    for (const model of LIMIT_MODELS) {
      const curve = modelNoStopCurve(model, SEA, [12, 30, 50]);
      [12, 30, 50].forEach((depthM, i) => {
        const own = modelNoStopMin(model, depthM, AIR, SEA);
        expect(curve.minutes[i]).toBe(own.value);
        expect(curve.leader[i]).toBe(own.leader);
      });
    }
  });

  it('show what changed in a century: at 30 m far longer than Haldane’s, then shorter again from Workman to ZH-L16C', () => {
    const at30 = (model: (typeof LIMIT_MODELS)[number]) => modelNoStopCurve(model, SEA, [30]).minutes[0]!;
    expect(at30(WORKMAN_1965)).toBeGreaterThan(5 * at30(HALDANE_1908));
    expect(at30(zhL16('C'))).toBeLessThan(at30(WORKMAN_1965));
  });

  it('owe part of it to conventions: with moist lungs Workman’s 30 m is some minutes longer', () => {
    const { ownMin, underZhL16Min } = conventionEffect(WORKMAN_1965, SEA, 30);
    expect(ownMin).toBeCloseTo(22.73, 2);
    expect(underZhL16Min - ownMin).toBeGreaterThan(0.5);
    const effectOnItself = conventionEffect(zhL16('C'), SEA, 30);
    expect(effectOnItself.underZhL16Min).toBe(effectOnItself.ownMin);
  });
});

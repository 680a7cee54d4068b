import { describe, expect, it } from 'vitest';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Step } from '@/lib/dive/dive';
import { computeTimeline, sampleAt, type Timeline } from '@/lib/dive/timeline';
import { simplify, type Profile } from '@/lib/files/records/simplify';
import { compartments } from '@/lib/tissue/coefficients';
import { noisyDive, switchTo } from '../made-recordings';

const site = { barPerMetre: 0.1, compartments: compartments('C', '1b') };

function profile(samples: readonly (readonly [number, number])[], switches: Profile['switches'] = []): Profile {
  return {
    timeS: Float64Array.from(samples, ([time]) => time),
    depthM: Float64Array.from(samples, ([, depth]) => depth),
    switches,
  };
}

/** The tissues the engine itself computes along some of the samples, with a gas change at a pinned one. */
function timelineAlong({ timeS, depthM, switches }: Profile, kept: ArrayLike<number>): Timeline {
  const steps: Step[] = [];
  for (let i = 1; i < kept.length; i += 1) {
    const from = kept[i - 1]!;
    const to = kept[i]!;
    const change = switches.find(({ timeS: at }) => at > 0 && at === timeS[from]!);
    if (change) steps.push({ kind: 'switch', gas: change.gas });
    const durationS = timeS[to]! - timeS[from]!;
    const toM = depthM[to]!;
    if (toM === depthM[from]!) steps.push({ kind: 'stay', durationS });
    else steps.push({ kind: toM > depthM[from]! ? 'descend' : 'ascend', toM, durationS });
  }
  const settings = { ...defaultSettings(), gas: switches[0]?.gas ?? defaultSettings().gas };
  return computeTimeline({ settings, steps, lines: [] }, 2);
}

function worstBar(one: Timeline, other: Timeline): number {
  let worst = 0;
  for (let i = 0; i < one.length; i += 1) {
    const there = sampleAt(other, one.timeS[i]!);
    for (let c = 0; c < 16; c += 1) {
      const nitrogen = Math.abs(one.nitrogenBar[i * 16 + c]! - other.nitrogenBar[there * 16 + c]!);
      worst = Math.max(worst, nitrogen + Math.abs(one.heliumBar[i * 16 + c]! - other.heliumBar[there * 16 + c]!));
    }
  }
  return worst;
}

const all = ({ timeS }: Profile) => Array.from(timeS, (_, i) => i);

describe('simplifying a profile', () => {
  it('leaves out samples on a straight line at no cost at all', () => {
    const simple = simplify(
      profile([
        [0, 0],
        [60, 5],
        [120, 10],
        [180, 15],
        [240, 20],
        [600, 20],
        [900, 20],
      ]),
      site,
    );
    expect([...simple.kept]).toEqual([0, 4, 6]);
    expect(simple.tissueErrorBar).toBeLessThan(1e-12);
  });

  it.each([
    ['air', [switchTo(0, 0.21)], []],
    ['trimix and a change to 50%', [switchTo(0, 0.18, 0.45), switchTo(1500, 0.5)], [750]],
  ])(
    'on %s keeps the tissues the engine computes within what is allowed, and says exactly how far off they are',
    (_, switches, pins) => {
      const recorded = profile(noisyDive(40, 2, 35, 7), switches);
      const whole = timelineAlong(recorded, all(recorded));
      for (const tissueBar of [0.02, 0.005, 0.001]) {
        const simple = simplify(recorded, site, { closeness: { tissueBar, depthM: 0.5 }, pins });
        const both = worstBar(whole, timelineAlong(recorded, simple.kept));
        expect(both).toBeLessThanOrEqual(tissueBar);
        expect(simple.tissueErrorBar).toBeCloseTo(both, 9);
        expect(simple.kept.length).toBeLessThan(recorded.timeS.length / 3);
      }
    },
  );

  it('keeps the depth within what is allowed at every sample', () => {
    const recorded = profile(noisyDive(30, 2, 25, 11));
    const simple = simplify(recorded, site, { closeness: { tissueBar: 1, depthM: 0.2 } });
    expect(simple.depthErrorM).toBeLessThanOrEqual(0.2 + 1e-12);
    let worst = 0;
    for (let k = 1; k < simple.kept.length; k += 1) {
      const [from, to] = [simple.kept[k - 1]!, simple.kept[k]!];
      for (let i = from; i < to; i += 1) {
        const line =
          recorded.depthM[from]! + ((recorded.depthM[to]! - recorded.depthM[from]!) * (i - from)) / (to - from);
        worst = Math.max(worst, Math.abs(line - recorded.depthM[i]!));
      }
    }
    expect(simple.depthErrorM).toBeCloseTo(worst, 9);
  });

  it('keeps every sample that is pinned, and the first and the last', () => {
    const { kept } = simplify(profile(noisyDive(20, 2, 20, 3)), site, { pins: [17, 333] });
    expect([...kept]).toEqual(expect.arrayContaining([0, 17, 333, 600]));
  });

  it('takes a short record exactly as it is', () => {
    const { kept, depthErrorM } = simplify(
      profile([
        [0, 0],
        [60, 10.1],
        [120, 10.3],
        [180, 10.2],
        [240, 0],
      ]),
      site,
      { keepUpTo: 10 },
    );
    expect([...kept]).toEqual([0, 1, 2, 3, 4]);
    expect(depthErrorM).toBe(0);
  });

  it('makes no step faster than a script can say', () => {
    const { kept } = simplify(
      profile([
        [0, 0],
        [0.1, 0.9],
        [0.2, 0],
        [10, 3],
        [20, 3],
      ]),
      site,
    );
    expect([...kept]).toEqual([0, 2, 3, 4]);
  });
});

import { describe, expect, it } from 'vitest';
import type { Settings } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { believedDive, isRight } from '@/lib/rules/unit/believed-dive';
import { believedTimeline } from '@/lib/rules/unit/believed-timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { diveOf, down, rest, setupOf, stay, up } from '../made-dives';

const steps = [
  down(30, 120),
  stay(600),
  up(5, 200),
  stay(180),
  up(0, 40),
  rest(3600),
  down(20, 120),
  stay(600),
  up(0, 150),
];
const dive = diveOf(steps);
const NITROX = { o2: 0.32, he: 0 };
const depthsOf = (setup: Parameters<typeof setupOf>[0], settings: Partial<Settings> = {}) =>
  believedDive(diveOf(steps, settings), setupOf(setup)).dive.steps.flatMap((step) => ('toM' in step ? [step.toM] : []));
const bar = (setup: Parameters<typeof setupOf>[0], settings: Partial<Settings> = {}) =>
  computeTimeline(believedDive(diveOf(steps, settings), setupOf(setup)).dive, 60).ambientBar[2]!;

describe('the dive as a unit believes it', () => {
  it('is the very same dive where nothing is set wrong', () => {
    const right = setupOf({ gas: AIR, altitudeM: 0, water: 'reference', gradientFactors: { low: 0.85, high: 0.85 } });
    expect(believedDive(dive, right).dive).toBe(dive);
    expect(isRight(dive, right)).toBe(true);
  });

  it.each([
    [{ gas: NITROX }],
    [{ altitudeM: 2000 }],
    [{ water: 'salt' as const }],
    [{ gradientFactors: { low: 0.4, high: 0.7 } }],
    [{ depthOffsetM: 0.5 }],
    [{ depthScale: 1.01 }],
    [{ freshBeforeDives: [1] }],
    [{ mode: 'gauge' as const }],
  ])('is not right with %j', (setup) => {
    expect(isRight(dive, setupOf(setup))).toBe(false);
  });

  it.each([
    ['an offset is added below the surface and not at it', { depthOffsetM: 0.8 }, [30.8, 5.8, 0, 20.8, 0]],
    ['an offset upward never shows less than nothing', { depthOffsetM: -6 }, [24, 0, 0, 14, 0]],
    ['a scale multiplies every depth', { depthScale: 1.1 }, [33, 5.5, 0, 22, 0]],
    ['scale first, offset then', { depthScale: 1.1, depthOffsetM: 1 }, [34, 6.5, 0, 23, 0]],
  ])('%s', (_, setup, expected) => {
    expect(depthsOf(setup).map((depthM) => Math.round(depthM * 1e9) / 1e9)).toEqual(expected);
  });

  it('has other depths but the same pressures with a gauge set to another water', () => {
    const salt = { water: 'salt' as const };
    // A metre of sea water weighs 1030 · 9.80665 Pa = 0.10100850 bar; set to reference water the unit shows more metres.
    expect(depthsOf({ water: 'reference' }, salt)[0]).toBeCloseTo(30 * 1.0100849, 5);
    expect(bar({ water: 'reference' }, salt)).toBeCloseTo(bar({}, salt), 12);
  });

  it('adds the water to another air pressure with another altitude', () => {
    // 2000 m in the standard atmosphere is 794.95 hPa (U.S. Standard Atmosphere 1976), sea level 1013.25 hPa.
    expect(bar({}) - bar({ altitudeM: 2000 })).toBeCloseTo(1.01325 - 0.79495, 4);
  });

  it('takes its diver to be settled at the altitude it is set to', () => {
    const settings = believedDive(dive, setupOf({ altitudeM: 1500 })).dive.settings;
    expect(settings.start).toEqual({ kind: 'adapted', altitudeM: 1500 });
  });

  it('keeps tensions carried over from an earlier dive, altitude or not', () => {
    const start = {
      kind: 'tensions' as const,
      nitrogenBar: Array<number>(16).fill(1),
      heliumBar: Array<number>(16).fill(0),
    };
    const settings = believedDive(diveOf(steps, { start }), setupOf({ altitudeM: 1500 })).dive.settings;
    expect(settings.start).toBe(start);
  });

  it('follows switches while its gas is right, and none once it is wrong', () => {
    const oxygen = { o2: 1, he: 0 };
    const switching = diveOf([down(30, 120), up(6, 200), { kind: 'switch', gas: oxygen }, stay(60)], {
      carried: [{ gas: oxygen, fromM: 6 }],
    });
    expect(believedDive(switching, setupOf({ gas: AIR })).dive).toBe(switching);
    const wrong = believedDive(switching, setupOf({ gas: NITROX })).dive;
    expect(wrong.steps[2]).toEqual({ kind: 'switch', gas: NITROX });
    expect(wrong.settings).toMatchObject({ gas: NITROX, carried: [] });
  });

  it('begins anew at the first leg of a dive before which its memory was lost', () => {
    expect(believedDive(dive, setupOf({ freshBeforeDives: [1] })).freshAtLegs).toEqual([6]);
    expect(believedDive(dive, setupOf({ freshBeforeDives: [4] })).freshAtLegs).toEqual([]);
  });
});

describe('the tissues of a unit that lost its memory', () => {
  const settledBar = (1.01325 - 0.0627) * 0.79;
  const fresh = (settings: Partial<Settings>) => {
    const timeline = believedTimeline(
      believedDive(diveOf(steps, settings), setupOf({ freshBeforeDives: [1] })),
      10,
      {},
    );
    const sample = timeline.leg.indexOf(6);
    return timeline.nitrogenBar.slice(sample * COMPARTMENTS, (sample + 1) * COMPARTMENTS);
  };

  it.each([
    ['settled here', {}],
    ['just come from a mountain', { start: { kind: 'arrived' as const, fromM: 3000, agoS: 3600 } }],
    [
      'loaded from an earlier dive',
      {
        start: {
          kind: 'tensions' as const,
          nitrogenBar: Array<number>(16).fill(1.5),
          heliumBar: Array<number>(16).fill(0.1),
        },
      },
    ],
  ])('are those of someone who lives here, though the diver was %s', (_, settings) => {
    for (const tension of fresh(settings)) expect(tension).toBeCloseTo(settledBar, 12);
  });
});

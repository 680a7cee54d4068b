import { describe, expect, it } from 'vitest';
import { wrongSettings } from '@/lib/rules/unit/wrong-settings';
import { diveOf, setupOf } from '../made-dives';

const dive = diveOf([], { gradientFactors: { low: 0.4, high: 0.85 } });
const wrong = (setup: Parameters<typeof setupOf>[0], system: 'metric' | 'imperial' = 'metric') =>
  wrongSettings(dive, setupOf(setup), system);

describe('what is wrong with a unit', () => {
  it.each([
    [{ mode: 'gauge' as const }, 'is in gauge mode'],
    [{ gas: { o2: 0.32, he: 0 } }, 'believes 32%, not air'],
    [{ altitudeM: 700 }, 'is set to an altitude of 700 m, not 0 m'],
    [{ water: 'salt' as const }, 'is set to salt water, not reference water'],
    [{ gradientFactors: { low: 0.3, high: 0.85 } }, 'goes by gradient factors 30/85, not 40/85'],
    [{ gradientFactors: { low: 0.4, high: 0.7 } }, 'goes by gradient factors 40/70, not 40/85'],
    [{ depthOffsetM: 0.5 }, 'reads 0.5 m too deep'],
    [{ depthOffsetM: -0.5 }, 'reads 0.5 m too shallow'],
    [{ depthScale: 1.025 }, 'reads 102.5% of every depth'],
    [{ freshBeforeDives: [1] }, 'starts dive 2 with fresh tissues'],
  ])('%j: it %s', (setup, words) => expect(wrong(setup)).toEqual([words]));

  it('is nothing where it is told what is so', () =>
    expect(
      wrong({
        gas: { o2: 0.21, he: 0 },
        altitudeM: 0,
        water: 'reference',
        gradientFactors: { low: 0.4, high: 0.85 },
        depthOffsetM: 0,
        depthScale: 1,
      }),
    ).toEqual([]));

  it('is told in feet to who dives in feet', () =>
    expect(wrong({ altitudeM: 300, depthOffsetM: 0.9144 }, 'imperial')).toEqual([
      'is set to an altitude of 984 ft, not 0 ft',
      'reads 3 ft too deep',
    ]));
});

import { describe, expect, it } from 'vitest';
import type { DepthDeviation } from '@/lib/bench/deviations';
import { seemsSetTo } from '@/lib/bench/water-hint';
import { barPerMetre, type Water } from '@/lib/physics/water';

/** What a unit set to one water shows at true depths of another. */
const shown = (own: Water, set: Water, depthsM: readonly number[]): DepthDeviation[] =>
  depthsM.map((depthM) => {
    const shownM = (depthM * barPerMetre(own)) / barPerMetre(set);
    return { expected: { depthM }, shownM, deviationM: shownM - depthM } as DepthDeviation;
  });

describe('the water a unit seems to be set to', () => {
  it('is the one that explains its depths', () => {
    expect(seemsSetTo('salt', shown('salt', 'fresh', [10, 20, 30]))).toBe('fresh');
    expect(seemsSetTo('fresh', shown('fresh', 'salt', [10, 20, 30]))).toBe('salt');
  });

  it('is not asked for where depths need no explaining, or none explains them', () => {
    expect(seemsSetTo('salt', shown('salt', 'salt', [10, 20, 30]))).toBeUndefined();
    const off = shown('salt', 'salt', [10, 20, 30]).map((one) => ({ ...one, shownM: one.shownM! * 1.1 }));
    expect(seemsSetTo('salt', off)).toBeUndefined();
  });

  it('cannot be told by depths so small that a digit of the display is as much, nor by a single one', () => {
    expect(seemsSetTo('salt', shown('salt', 'fresh', [2, 4, 7.9]))).toBeUndefined();
    expect(seemsSetTo('salt', shown('salt', 'fresh', [2, 8, 7]))).toBeUndefined();
    expect(seemsSetTo('salt', shown('salt', 'fresh', [2, 8, 9]))).toBe('fresh');
  });
});

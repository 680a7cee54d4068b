import { describe, expect, it } from 'vitest';
import { supersaturation } from '@/lib/ascent/supersaturation';
import { plainLoad } from './plain-model';

describe('supersaturation where twice the ambient pressure is tolerated', () => {
  it.each([
    [1, 1, 0],
    [1.5, 1, 0.5],
    [2, 1, 1],
    [4, 2, 1],
    [1, 2, -0.5],
  ])('of %f bar at %f bar is %f', (tensionBar, ambientBar, value) => {
    expect(supersaturation(plainLoad(tensionBar), ambientBar).value).toBeCloseTo(value, 12);
  });

  it('is set by the compartment furthest along', () => {
    const load = plainLoad(1);
    load.nitrogenBar[7] = 1.2;
    expect(supersaturation(load, 1)).toEqual({ value: expect.closeTo(0.2, 12), leader: 8 });
  });
});

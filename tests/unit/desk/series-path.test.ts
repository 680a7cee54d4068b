import { describe, expect, it } from 'vitest';
import { runsOf, seriesPath, thinned } from '@/app/pictures/axes/series-path';

describe('a series drawn as a path', () => {
  it('takes about as many samples as asked for, always the first and the last', () => {
    const chosen = thinned(1001, 100);
    expect(chosen[0]).toBe(0);
    expect(chosen.at(-1)).toBe(1000);
    expect(chosen.length).toBeLessThanOrEqual(102);
    expect(thinned(0, 10)).toEqual([]);
  });

  it('is broken where nothing holds, each unbroken run by itself', () => {
    const deep = [0, 3, 4, 0, 0, 5];
    expect(runsOf([0, 1, 2, 3, 4, 5], (i) => deep[i]! > 0)).toEqual([[1, 2], [5]]);
    expect(runsOf([0, 3, 4], (i) => deep[i]! > 0)).toEqual([]);
    expect(runsOf([1, 2], () => true)).toEqual([[1, 2]]);
  });

  it('goes through each sample, to a tenth of a picture unit', () => {
    expect(
      seriesPath(
        [0, 1, 2],
        (i) => i * 10,
        (i) => i / 3,
      ),
    ).toBe('M0,0L10,0.3L20,0.7');
  });
});

import { describe, expect, it } from 'vitest';
import { seeded, shuffled } from '@/lib/quantity/seeded';

describe('seeded chance', () => {
  it('goes the same way from the same seed, and another from another', () => {
    const draw = (seed: number) => Array.from({ length: 5 }, seeded(seed));
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('fills 0 to 1 evenly', () => {
    const random = seeded(1);
    const tenths = new Array<number>(10).fill(0);
    for (let i = 0; i < 10_000; i += 1) tenths[Math.floor(random() * 10)]! += 1;
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(120);
  });

  it('shuffles without losing any', () => {
    expect(shuffled([1, 2, 3, 4, 5], seeded(3)).sort()).toEqual([1, 2, 3, 4, 5]);
  });
});

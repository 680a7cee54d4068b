import { describe, expect, it } from 'vitest';
import { thinned } from '@/lib/files/records/thin-samples';

const timeS = Float64Array.from({ length: 10_000 }, (_, i) => i);

describe('thinning samples for a picture', () => {
  it('keeps the highest and the lowest, so that a single spike stays', () => {
    const values = timeS.map((t) => (t === 7321 ? 60 : t === 41 ? -5 : 20));
    const { timeS: at, valueOf } = thinned(timeS, values, 100);
    expect(at.length).toBeLessThanOrEqual(201);
    expect(Math.max(...valueOf)).toBe(60);
    expect(Math.min(...valueOf)).toBe(-5);
    expect(at[valueOf.indexOf(60)]).toBe(7321);
    expect(at.every((t, i) => i === 0 || t > at[i - 1]!)).toBe(true);
    expect(at.at(-1)).toBe(9999);
  });

  it('leaves few samples as they are and passes over those that are no numbers', () => {
    const { timeS: at } = thinned(Float64Array.of(0, 1, NaN, 3), Float64Array.of(0, NaN, 2, 3), 100);
    expect([...at]).toEqual([0, 3]);
  });
});

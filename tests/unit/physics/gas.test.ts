import { describe, expect, it } from 'vitest';
import { fitTogether, gasName, sameGas } from '@/lib/physics/gas';

describe('a gas', () => {
  it('holds as much oxygen and helium as there is room for, but for a sum of fractions', () => {
    expect(fitTogether(0.5, 0.5)).toBe(true);
    expect(fitTogether(0.1 + 0.2, 0.7)).toBe(true);
    expect(fitTogether(0.5, 0.5001)).toBe(false);
    expect(fitTogether(NaN, 0)).toBe(false);
  });

  it('is the same where it differs by no more than writing and reading may change, and has its name then', () => {
    expect(sameGas({ o2: 0.32, he: 0 }, { o2: 0.32 + 1e-10, he: 0 })).toBe(true);
    expect(sameGas({ o2: 0.32, he: 0 }, { o2: 0.321, he: 0 })).toBe(false);
    expect(gasName({ o2: 0.21, he: 0 })).toBe('air');
    expect(gasName({ o2: 0.32, he: 0 })).toBe('32%');
    expect(gasName({ o2: 0.18, he: 0.45 })).toBe('18/45');
  });
});

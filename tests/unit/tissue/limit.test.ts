import { describe, expect, it } from 'vitest';
import { limitBar, mixedCoefficient, mValueBar, toleratedAmbientBar } from '@/lib/tissue/limit';

describe('a limit with a = 1 bar and b = 0.5', () => {
  it('is a + p/b', () => expect(mValueBar(1, 0.5, 1)).toBe(3));
  it('under half a gradient factor is half way from the ambient pressure', () =>
    expect(limitBar(1, 0.5, 0.5, 1)).toBe(2));
  it('solved for the ambient pressure gives it back', () => expect(toleratedAmbientBar(2, 1, 0.5, 0.5)).toBe(1));
  it('under no gradient factor at all is the ambient pressure itself', () => expect(limitBar(1, 0.5, 0, 1)).toBe(1));
});

describe('a coefficient of a mixture', () => {
  it('is each gas’s own, weighted by its tension', () => expect(mixedCoefficient(3, 1, 0.4, 0.8)).toBeCloseTo(0.5, 12));
  it('is so of little gas as of much', () => expect(mixedCoefficient(0.03, 0.01, 0.4, 0.8)).toBeCloseTo(0.5, 12));
  it('is nitrogen’s where there is no gas', () => expect(mixedCoefficient(0, 0, 0.4, 0.8)).toBe(0.4));
});

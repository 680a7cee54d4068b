import { expect, it } from 'vitest';
import { maximumOperatingDepthM, minimumOperatingDepthM } from '@/lib/physics/oxygen-depth';

// By hand from Dalton's law, at sea level in reference water: (pO2 / fO2 − 1.01325 bar) / 0.1 bar per metre.
it('finds where the oxygen reaches its limit', () => {
  expect(maximumOperatingDepthM(0.32, 1.4, 1.01325, 0.1)).toBeCloseTo(33.6175, 9);
  expect(maximumOperatingDepthM(0.5, 1.6, 1.01325, 0.1)).toBeCloseTo(21.8675, 9);
  expect(maximumOperatingDepthM(1, 1.6, 1.01325, 0.1)).toBeCloseTo(5.8675, 9);
});

it('is above the surface where even that is too deep, and nowhere without oxygen', () => {
  expect(maximumOperatingDepthM(1, 0.5, 1.01325, 0.1)).toBeLessThan(0);
  expect(maximumOperatingDepthM(0, 1.4, 1.01325, 0.1)).toBe(Infinity);
});

it('finds where there is enough oxygen', () => {
  expect(minimumOperatingDepthM(0.1, 0.16, 1.01325, 0.1)).toBeCloseTo(5.8675, 9);
  expect(minimumOperatingDepthM(0.21, 0.16, 1.01325, 0.1)).toBe(0);
  expect(minimumOperatingDepthM(0, 0.16, 1.01325, 0.1)).toBe(Infinity);
});

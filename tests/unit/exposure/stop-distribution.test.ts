import { describe, expect, it } from 'vitest';
import { stopDistributions } from '@/lib/exposure/stop-distribution';
import { scripted } from './scripted';

const dive = scripted(
  'gradient factors: 40/75',
  'descend to 45 m at 18 m/min',
  'stay 25 min',
  'ascend to surface at 9 m/min',
);
const found = stopDistributions(dive, { lows: [0.2, 0.6] });
const own = found.find(({ gradientFactors }) => gradientFactors.low === 0.4)!;

describe('stops spread deeper and shallower', () => {
  it('have the dive’s own spread among them, the deepest first', () => {
    expect(found.map(({ gradientFactors }) => gradientFactors.low)).toEqual([0.2, 0.4, 0.6]);
    expect(own.gradientFactors).toEqual({ low: 0.4, high: 0.75 });
    expect(found.map(({ stops }) => stops[0]!.depthM)).toEqual(
      [...found.map(({ stops }) => stops[0]!.depthM)].sort((one, other) => other - one),
    );
  });

  it('all take the same time, to a few seconds', () => {
    for (const { timeToSurfaceMin } of found)
      expect(Math.abs(timeToSurfaceMin - own.timeToSurfaceMin)).toBeLessThan(0.1);
  });

  it('spare the fast tissues when deeper, and the slow ones when shallower', () => {
    const [deep, , shallow] = found;
    expect(deep!.peaks[2]).toBeLessThan(shallow!.peaks[2]!);
    expect(deep!.surfacing.value).toBeGreaterThan(shallow!.surfacing.value);
    expect(deep!.peaks).toHaveLength(16);
  });

  it('leave out what cannot take the same time', () => {
    const strict = scripted(
      'gradient factors: 80/80',
      'descend to 45 m at 18 m/min',
      'stay 25 min',
      'ascend to surface at 9 m/min',
    );
    expect(stopDistributions(strict, { lows: [0.99] }).map(({ gradientFactors }) => gradientFactors.low)).toEqual([
      0.8,
    ]);
  });
});

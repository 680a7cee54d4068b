import { describe, expect, it } from 'vitest';
import { compressibility, pressureAtRatio } from '@/lib/exposure/compressibility';
import { absoluteOfGauge, gaugeOfAbsolute, IDEAL_GAS, REAL_GAS } from '@/lib/exposure/gas-law';
import { AIR, OXYGEN } from '@/lib/physics/gas';

const HELIUM = { o2: 0, he: 1 };

describe('compressibility', () => {
  it('is 1 where there is no pressure', () => {
    for (const gas of [AIR, OXYGEN, HELIUM]) expect(compressibility(gas, 0)).toBe(1);
  });

  it('takes the published values of a pure gas as they are', () => {
    expect(compressibility(OXYGEN, 200)).toBeCloseTo(0.9391, 12);
    expect(compressibility(HELIUM, 300)).toBeCloseTo(1.1413, 12);
  });

  it('lies between them at pressures and temperatures between', () => {
    expect(compressibility(OXYGEN, 241)).toBeCloseTo((0.9476 + 0.9544) / 2, 12);
    expect(compressibility(OXYGEN, 200, 295.65)).toBeCloseTo((0.9391 + 0.9465) / 2, 12);
  });

  it('keeps to the ends of the published temperatures', () => {
    expect(compressibility(AIR, 200, 250)).toBe(compressibility(AIR, 200, 288.15));
    expect(compressibility(AIR, 200, 350)).toBe(compressibility(AIR, 200, 300));
  });

  it('can be worked backwards', () => {
    for (const gas of [AIR, OXYGEN, HELIUM, { o2: 0.18, he: 0.45 }]) {
      for (const bar of [0.5, 1, 49.9, 50, 120, 200, 299, 300, 400]) {
        expect(pressureAtRatio(gas, bar / compressibility(gas, bar))).toBeCloseTo(bar, 9);
      }
    }
  });
});

describe('a cylinder’s content', () => {
  it('is volume times pressure as an ideal gas', () => {
    expect(IDEAL_GAS.contentL({ waterL: 12, gas: AIR }, 200)).toBe(2400);
    expect(IDEAL_GAS.absoluteBar({ waterL: 12, gas: AIR }, 2400)).toBe(200);
  });

  it('is less of air and more of oxygen as a real gas at 230 bar', () => {
    expect(REAL_GAS.contentL({ waterL: 12, gas: AIR }, 230)).toBeLessThan(12 * 230);
    expect(REAL_GAS.contentL({ waterL: 12, gas: OXYGEN }, 230)).toBeGreaterThan(12 * 230);
  });

  it('is told by a gauge that reads nothing at sea level', () => {
    expect(absoluteOfGauge(200)).toBe(201.01325);
    expect(gaugeOfAbsolute(1.01325)).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import {
  ambientBarAt,
  bestMix,
  equivalentAirDepthM,
  equivalentNarcoticDepthM,
  gasModM,
  hypoxicAboveM,
  narcoticFraction,
  partialPressures,
} from '@/lib/exposure/gas-depths';
import { AIR, OXYGEN } from '@/lib/physics/gas';

const SEA = { surfaceBar: 1.01325, barPerMetre: 0.1 };
const TRIMIX = { o2: 0.18, he: 0.45 };

describe('partial pressures', () => {
  it('add up to the ambient pressure', () => {
    const { oxygenBar, nitrogenBar, heliumBar } = partialPressures(TRIMIX, 7);
    expect([oxygenBar, nitrogenBar, heliumBar].map((bar) => Number(bar.toFixed(12)))).toEqual([1.26, 2.59, 3.15]);
  });
});

describe('the depths of a gas', () => {
  it('lie below the surface by what the pressure there leaves', () => {
    // 1.4 / 0.32 = 4.375 bar, less 1.01325 at the surface.
    expect(gasModM({ o2: 0.32, he: 0 }, 1.4, SEA)).toBeCloseTo(33.6175, 9);
  });

  it('are negative where the surface is beyond them already', () => {
    expect(gasModM(OXYGEN, 1, SEA)).toBeCloseTo(-0.1325, 9);
    expect(equivalentAirDepthM(OXYGEN, 0, SEA)).toBeCloseTo(-10.1325, 9);
  });

  it('have no end for a gas without oxygen', () => {
    expect(gasModM({ o2: 0, he: 1 }, 1.4, SEA)).toBe(Infinity);
    expect(hypoxicAboveM({ o2: 0, he: 1 }, SEA)).toBe(Infinity);
  });

  it('say from where down a gas has the customary least of oxygen, deeper at altitude', () => {
    expect(hypoxicAboveM(TRIMIX, SEA)).toBe(0);
    expect(hypoxicAboveM({ o2: 0.1, he: 0.7 }, SEA)).toBeCloseTo(5.8675, 9);
    expect(hypoxicAboveM(TRIMIX, { surfaceBar: 0.8, barPerMetre: 0.1 })).toBeCloseTo(0.16 / 0.018 - 8, 9);
    // At 2,600 m the air itself has 0.155 bar of oxygen, and people live on it.
    expect(hypoxicAboveM(AIR, { surfaceBar: 0.737, barPerMetre: 0.1 })).toBe(0);
  });

  it('are the depth itself for air', () => {
    for (const depthM of [0, 17.3, 40, 66]) {
      expect(equivalentAirDepthM(AIR, depthM, SEA)).toBe(depthM);
      expect(equivalentNarcoticDepthM(AIR, depthM, 'nitrogen', SEA)).toBe(depthM);
      expect(equivalentNarcoticDepthM(AIR, depthM, 'nitrogen and oxygen', SEA)).toBe(depthM);
    }
  });
});

describe('narcosis', () => {
  it('counts oxygen or not, as set, and never helium', () => {
    expect(narcoticFraction(TRIMIX, 'nitrogen')).toBeCloseTo(0.37, 12);
    expect(narcoticFraction(TRIMIX, 'nitrogen and oxygen')).toBeCloseTo(0.55, 12);
  });

  it('of nitrox is that of air where oxygen counts, and less where it does not', () => {
    const nitrox = { o2: 0.36, he: 0 };
    expect(equivalentNarcoticDepthM(nitrox, 30, 'nitrogen and oxygen', SEA)).toBe(30);
    expect(equivalentNarcoticDepthM(nitrox, 30, 'nitrogen', SEA)).toBeLessThan(30);
  });
});

describe('the best mixture', () => {
  it('just reaches the oxygen limit', () => {
    const gas = bestMix(36, { pO2LimitBar: 1.4 }, SEA);
    expect(gas.o2 * ambientBarAt(36, SEA)).toBeCloseTo(1.4, 12);
    expect(gas.he).toBe(0);
  });

  it('is never more than pure oxygen', () => {
    expect(bestMix(2, { pO2LimitBar: 1.6 }, SEA)).toEqual({ o2: 1, he: 0 });
  });

  it.each(['nitrogen', 'nitrogen and oxygen'] as const)(
    'has as much helium as brings narcosis down to what is wished, counting %s',
    (narcotic) => {
      const gas = bestMix(60, { pO2LimitBar: 1.4, narcosis: { asAirAtM: 30, narcotic } }, SEA);
      expect(equivalentNarcoticDepthM(gas, 60, narcotic, SEA)).toBeCloseTo(30, 6);
    },
  );

  it('has no helium where air would be no worse', () => {
    expect(bestMix(25, { pO2LimitBar: 1.4, narcosis: { asAirAtM: 30, narcotic: 'nitrogen and oxygen' } }, SEA).he).toBe(
      0,
    );
  });

  it('has no nitrogen left to take out where oxygen alone is more narcotic than wished', () => {
    const gas = bestMix(3, { pO2LimitBar: 1.2, narcosis: { asAirAtM: 0, narcotic: 'nitrogen and oxygen' } }, SEA);
    expect(gas.o2 + gas.he).toBeCloseTo(1, 12);
  });
});

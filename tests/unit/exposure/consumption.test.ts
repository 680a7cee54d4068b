import { describe, expect, it } from 'vitest';
import {
  breathingRatesOf,
  gasBreathedL,
  loggedConsumptionLMin,
  phasesOf,
  stressFactorOf,
} from '@/lib/exposure/consumption';
import { REAL_GAS } from '@/lib/exposure/gas-law';
import { AIR } from '@/lib/physics/gas';
import { scripted, timelineOf } from './scripted';

const TWELVE = { waterL: 12, gas: AIR };

describe('breathing rates', () => {
  it('are 20 L/min and twice as much in fright unless told', () => {
    const { settings } = scripted('');
    expect(breathingRatesOf(settings)).toEqual({ descent: 20, bottom: 20, ascent: 20, stops: 20 });
    expect(stressFactorOf(settings)).toBe(2);
  });

  it('are those of the bottom where a phase has none', () => {
    const { settings } = scripted('consumption: 18 L/min', 'consumption at stops: 14 L/min', 'stress factor: 3');
    expect(breathingRatesOf(settings)).toEqual({ descent: 18, bottom: 18, ascent: 18, stops: 14 });
    expect(stressFactorOf(settings)).toBe(3);
  });
});

describe('phases', () => {
  it('are told of a dive in a pool, too', () => {
    const { legs } = timelineOf(
      'descend to 0.8 m in 10 s',
      'stay 5 min',
      'ascend to 0.5 m in 10 s',
      'stay 1 min',
      'ascend to surface in 10 s',
    );
    expect(phasesOf(legs)).toEqual(['descent', 'bottom', 'ascent', 'stops', 'ascent']);
  });

  it('make a stay a stop once the diver has come up from the deepest point of that dive', () => {
    const { legs } = timelineOf(
      'descend to 10 m at 18 m/min',
      'stay 5 min',
      'descend to 30 m at 18 m/min',
      'stay 5 min',
      'ascend to 6 m at 9 m/min',
      'stay 3 min',
      'ascend to surface at 9 m/min',
      'interval 1 h',
      'descend to 6 m at 18 m/min',
      'stay 5 min',
      'ascend to surface at 9 m/min',
    );
    expect(phasesOf(legs)).toEqual([
      'descent',
      'bottom',
      'descent',
      'bottom',
      'ascent',
      'stops',
      'ascent',
      'stops',
      'descent',
      'bottom',
      'ascent',
    ]);
  });
});

describe('the gas breathed', () => {
  it('is the rate times the mean ambient pressure times the minutes', () => {
    expect(gasBreathedL(20, 4, 4, 10)).toBe(800);
    expect(gasBreathedL(20, 1, 4, 2)).toBe(100);
  });
});

describe('the rate of a logged dive', () => {
  const timeline = timelineOf('descend to 20 m at 20 m/min', 'stay 28 min', 'ascend to surface at 20 m/min');
  // 28 min at 3.01325 bar and 2 min at 2.01325 bar on average.
  const barMinutes = 28 * 3.01325 + 2 * 2.01325;

  it('is the gas used over pressure times minutes', () => {
    expect(loggedConsumptionLMin(TWELVE, { startBar: 200, endBar: 50 }, timeline)).toBeCloseTo(
      (12 * 150) / barMinutes,
      9,
    );
  });

  it('is less as a real gas, since full cylinders hold less than they seem to', () => {
    const real = loggedConsumptionLMin(TWELVE, { startBar: 230, endBar: 50 }, timeline, { law: REAL_GAS });
    expect(real).toBeLessThan(loggedConsumptionLMin(TWELVE, { startBar: 230, endBar: 50 }, timeline));
    expect(real).toBeGreaterThan((12 * 150) / barMinutes);
  });

  it('looks at one dive of the day', () => {
    const two = timelineOf(
      'descend to 5 m at 10 m/min',
      'stay 30 min',
      'ascend to surface at 10 m/min',
      'interval 1 h',
      'descend to 20 m at 20 m/min',
      'stay 28 min',
      'ascend to surface at 20 m/min',
    );
    expect(loggedConsumptionLMin(TWELVE, { startBar: 200, endBar: 50 }, two, { dive: 1 })).toBeCloseTo(
      (12 * 150) / barMinutes,
      9,
    );
  });
});

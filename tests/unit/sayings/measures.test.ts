import { describe, expect, it } from 'vitest';
import { MEASURES, numberAs, partsAs, printAs, type MeasureId } from '@/lib/sayings/measures';

describe('a figure as a person reads it', () => {
  it.each<[MeasureId, number, metric: string, imperial: string]>([
    ['depth', 12.34, '12.3 m', '40 ft'],
    ['greatestDepth', 12.36, '12.4 m', '41 ft'],
    // Time that is gone is told when it is whole; what is left, too.
    ['runTimeS', 754.9, '12:34', '12:34'],
    ['diveTimeS', 3661.9, '61:01', '61:01'],
    ['noStopMin', 12.99, '12 min', '12 min'],
    ['noStopMin', 99, '99 min', '99 min'],
    ['noStopMin', 99.01, 'more than 99 min', 'more than 99 min'],
    ['noStopMin', Infinity, 'more than 99 min', 'more than 99 min'],
    ['creditedNoStopMin', 0.99, '0 min', '0 min'],
    ['noStopLimitMin', 179.9, '179 min', '179 min'],
    ['noStopLimitMin', 180, '3 h', '3 h'],
    ['noStopLimitMin', 195.9, '3 h 15 min', '3 h 15 min'],
    ['noStopLimitMin', Infinity, 'no limit', 'no limit'],
    ['noStopLimitMin', 0, 'none left', 'none left'],
    ['noStopLimitMin', 0.5, '0 min', '0 min'],
    ['noStopExactMin', 22.79, '22.7 min', '22.7 min'],
    ['noStopExactMin', Infinity, 'no limit', 'no limit'],
    // What is still asked of a diver is never told too short or too shallow.
    ['ceilingM', 2.01, '2.1 m', '7 ft'],
    ['ceilingM', 0, 'none', 'none'],
    ['stopM', 6, '6 m', '20 ft'],
    ['stopM', 0, 'none', 'none'],
    ['stopMin', 2.01, '2.1 min', '2.1 min'],
    ['stopMin', 3, '3 min', '3 min'],
    ['stopMin', Infinity, 'never', 'never'],
    ['plannedS', 61.1, '1:02', '1:02'],
    ['timeToSurfaceMin', 4.1, '5 min', '5 min'],
    ['timeToSurfaceMin', Infinity, 'never', 'never'],
    ['safetyStopS', 179.1, '3:00', '3:00'],
    ['imposedStopS', 60.1, '1:01', '1:01'],
    ['noFlyH', 17.99, '18 h', '18 h'],
    ['desaturationH', 0.51, '31 min', '31 min'],
    ['lockedH', 47.5, '47 h 30 min', '47 h 30 min'],
    ['supersaturation', 0.846, '85%', '85%'],
    ['rateMMin', -9, '9 m/min', '30 ft/min'],
    ['oxygenBar', 1.396, '1.40 bar', '1.40 bar'],
    ['oxygenShare', 0.124, '12%', '12%'],
    ['lungUnits', 60.6, '61', '61'],
    ['densityGL', 5.16, '5.2 g/L', '5.2 g/L'],
    ['cylinderBar', 120.4, '120 bar', '1746 psi'],
  ])('%s of %d is “%s”, in feet “%s”', (measure, figure, metric, imperial) => {
    expect([printAs(measure, figure, 'metric'), printAs(measure, figure, 'imperial')]).toEqual([metric, imperial]);
  });

  it.each<[MeasureId, number, readonly [string, string]]>([
    ['noStopMin', 12.5, ['12', 'min']],
    ['noStopMin', 120, ['>99', 'min']],
    ['ceilingM', 0, ['none', '']],
    ['ceilingM', 3.21, ['3.3', 'm']],
    ['supersaturation', 0.5, ['50', '%']],
    ['noFlyH', 17.5, ['17 h 30 min', '']],
    ['noFlyH', 18, ['18 h', '']],
    ['desaturationH', 0.5, ['30 min', '']],
    ['runTimeS', 61, ['1:01', '']],
    ['lungUnits', 60, ['60', '']],
    ['densityGL', 5.2, ['5.2', 'g/L']],
  ])('%s of %d is parted into %j', (measure, figure, parts) => {
    expect(partsAs(measure, figure, 'metric')).toEqual(parts);
  });

  it('is rounded in a file the way it is told: time left down, what is asked up', () => {
    expect(numberAs('noStopMin', 12.39, 1)).toBe(12.3);
    expect(numberAs('ceilingM', 3.21, 1)).toBe(3.3);
    expect(numberAs('supersaturation', 0.256, 2)).toBe(0.26);
  });

  it('has a name for each', () => {
    for (const { name } of Object.values(MEASURES)) expect(name).toMatch(/^[A-Z][a-z]/);
  });
});

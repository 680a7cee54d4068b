import { describe, expect, it } from 'vitest';
import {
  dailyExposureRate,
  dailyLimitMin,
  LIMITS_END_BAR,
  pulmonaryRate,
  singleExposureRate,
  singleLimitMin,
} from '@/lib/exposure/oxygen-rates';

const atm = (value: number) => value * 1.01325;

describe('the oxygen limits', () => {
  it('change evenly in minutes between the rows of the table', () => {
    expect(singleLimitMin(atm(1.55))).toBeCloseTo((120 + 45) / 2, 9);
    expect(singleLimitMin(atm(1.05))).toBeCloseTo(270, 9);
    expect(dailyLimitMin(atm(1.45))).toBeCloseTo(180, 9);
  });

  it('count nothing at or below half an atmosphere', () => {
    expect(singleLimitMin(atm(0.5))).toBe(Infinity);
    expect(singleExposureRate.at(0.21)).toBe(0);
    expect(singleExposureRate.at(0)).toBe(0);
    expect(pulmonaryRate().at(atm(0.5))).toBe(0);
  });

  it('set in evenly from half an atmosphere to the first row', () => {
    expect(singleExposureRate.at(atm(0.55))).toBeCloseTo(1 / 720 / 2, 12);
  });

  it('go on rising above the last row as between the last two', () => {
    expect(LIMITS_END_BAR).toBeCloseTo(atm(1.6), 12);
    expect(singleExposureRate.at(atm(1.7))).toBeCloseTo(2 / 45 - 1 / 120, 9);
  });
});

describe('pulmonary dose', () => {
  it('is a unit a minute at one atmosphere', () => {
    expect(pulmonaryRate().at(atm(1))).toBeCloseTo(1, 12);
    expect(pulmonaryRate('textbook').at(atm(1))).toBeCloseTo(1, 12);
  });

  it('grows faster with the textbook exponent', () => {
    expect(pulmonaryRate('textbook').at(atm(1.6))).toBeGreaterThan(pulmonaryRate().at(atm(1.6)));
  });
});

describe('what counts up while the pressure changes evenly', () => {
  const RATES = {
    single: singleExposureRate,
    daily: dailyExposureRate,
    pulmonary: pulmonaryRate(),
    textbook: pulmonaryRate('textbook'),
  };
  const RAMPS = [
    [0.2, 0.4],
    [0.2, 1],
    [0.55, 0.58],
    [0.9, 1.55],
    [1.3, 0.3],
    [1.4, 1.43],
    [1.2, 2.5],
    [1.7, 1.9],
  ] as const;

  it.each(Object.entries(RATES))(
    'is the integral of the %s rate, by the midpoint rule in a hundred thousand strips',
    (_, rate) => {
      const strips = 100_000;
      for (const [from, to] of RAMPS) {
        let sum = 0;
        for (let i = 0; i < strips; i += 1) sum += rate.at(from + ((to - from) * (i + 0.5)) / strips);
        expect(rate.over(from, to, 30)).toBeCloseTo((sum / strips) * 30, 8);
      }
    },
  );

  it('is the rate times the minutes when it does not change', () => {
    expect(singleExposureRate.over(atm(1.6), atm(1.6), 45)).toBeCloseTo(1, 12);
    expect(singleExposureRate.over(1.4, 1.4 + 1e-9, 10)).toBeCloseTo(singleExposureRate.over(1.4, 1.4, 10), 9);
  });
});

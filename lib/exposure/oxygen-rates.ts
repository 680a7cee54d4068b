import published from '../../content/published/oxygen.json';
import { SEA_LEVEL_BAR } from '../physics/atmosphere';
import { joinedRate, limitPiece, straightPiece, type ExposureRate } from './exposure-rate';

/*
 * What oxygen costs, from the NOAA exposure limits and the unit pulmonary toxic dose. Both are published in standard
 * atmospheres and taken so: 1.4 bar is 1.382 atm. All pressures here are in bar.
 */

const BAR_PER_ATM = SEA_LEVEL_BAR;

/** At or below this nothing counts, neither for the brain nor for the lungs, bar: half an atmosphere. */
export const NOTHING_COUNTS_BAR = 0.5 * BAR_PER_ATM;

/** The published limits as rows, lowest pressure first: bar, and minutes. */
export const OXYGEN_LIMITS = published.limits
  .map(({ po2Atm, singleMin, dailyMin, obtained }) => ({ bar: po2Atm * BAR_PER_ATM, singleMin, dailyMin, obtained }))
  .sort((one, other) => one.bar - other.bar);

/** The highest oxygen pressure with a published limit, bar. Beyond it every fraction is a guess. */
export const LIMITS_END_BAR = OXYGEN_LIMITS.at(-1)!.bar;

/**
 * Fraction of the single-exposure limit used in a minute. The table says nothing between its rows, and here the limit in
 * minutes is taken to change evenly between them: a modelling choice. So is what lies outside the table: below 0.6 atm
 * the rate falls evenly to nothing at 0.5 atm, and above 1.6 atm it goes on rising as steeply as between the last rows.
 */
export const singleExposureRate: ExposureRate = limitRate(({ singleMin }) => singleMin);

/** Fraction of the 24-hour limit used in a minute; choices as for the single exposure. */
export const dailyExposureRate: ExposureRate = limitRate(({ dailyMin }) => dailyMin);

/** The longest single exposure at an oxygen pressure, min; Infinity where nothing counts. */
export function singleLimitMin(pO2Bar: number): number {
  return 1 / singleExposureRate.at(pO2Bar);
}

/** The longest exposure in 24 hours at an oxygen pressure, min; Infinity where nothing counts. */
export function dailyLimitMin(pO2Bar: number): number {
  return 1 / dailyExposureRate.at(pO2Bar);
}

/** 0.83 is used in much of diving and fits the printed rates, 5/6 is a textbook's. */
export type PulmonaryExponent = keyof typeof published.exponent;

/**
 * Units of pulmonary dose in a minute: ((pO2 − 0.5)/0.5)^n with pO2 in atm, one unit being a minute at 1 atm; 0 at or
 * below 0.5 atm (Lambertsen and Clark's unit pulmonary toxic dose).
 */
export function pulmonaryRate(exponent: PulmonaryExponent = 'diving'): ExposureRate {
  return PULMONARY_RATES[exponent];
}

const PULMONARY_RATES = {
  diving: powerRate(published.exponent.diving),
  textbook: powerRate(published.exponent.textbook),
};

function powerRate(exponent: number): ExposureRate {
  const excess = (bar: number) => (bar - NOTHING_COUNTS_BAR) / NOTHING_COUNTS_BAR;
  return joinedRate([
    {
      fromBar: NOTHING_COUNTS_BAR,
      at: (bar) => excess(bar) ** exponent,
      integral: (bar) => (NOTHING_COUNTS_BAR * excess(bar) ** (exponent + 1)) / (exponent + 1),
    },
  ]);
}

function limitRate(limitOf: (row: (typeof OXYGEN_LIMITS)[number]) => number): ExposureRate {
  const rows = OXYGEN_LIMITS;
  const [first, last, beforeLast] = [rows[0]!, rows.at(-1)!, rows.at(-2)!];
  const lastRise = (1 / limitOf(last) - 1 / limitOf(beforeLast)) / (last.bar - beforeLast.bar);
  return joinedRate([
    straightPiece(NOTHING_COUNTS_BAR, 0, 1 / limitOf(first) / (first.bar - NOTHING_COUNTS_BAR)),
    ...rows.slice(0, -1).map((row, i) => limitPiece(row.bar, limitOf(row), rows[i + 1]!.bar, limitOf(rows[i + 1]!))),
    straightPiece(last.bar, 1 / limitOf(last), lastRise),
  ]);
}

import { USUAL_VARIATION } from '@/lib/curves/variation';
import type { GradientFactors } from '@/lib/dive/dive';
import type { Gas } from '@/lib/physics/gas';
import { amount, listOf, oneOf, type Choices } from './choice';
import { MOST_CURVES } from '../plot/curve-looks';
import { anyId, depth, factors, gas, minutes } from './plate-choices';

export interface LimitsValues {
  readonly compartments: readonly number[];
  readonly pointed: number;
  readonly factors: GradientFactors;
  readonly anchor: number;
  readonly helium: '0' | '0.5' | '1';
  readonly at: number;
}
const compartment = (first: number) => amount(first, 1, 16);
export const LIMITS: Choices<LimitsValues> = {
  compartments: listOf(compartment(1), [1, 5, 12], 16),
  pointed: compartment(5),
  factors: factors(0.4, 0.85),
  anchor: depth(15),
  helium: oneOf('0', ['0', '0.5', '1']),
  at: depth(9),
};

export interface HalfTimesValues {
  readonly from: number;
  readonly to: number;
  readonly axis: 'even' | 'doubling';
  readonly compartment: number;
  /** Of 80 along the axis. */
  readonly place: number;
}
export const HALF_TIMES: Choices<HalfTimesValues> = {
  from: depth(0),
  to: depth(30),
  axis: oneOf('even', ['even', 'doubling']),
  compartment: compartment(5),
  place: amount(20, 0, 80),
};

export interface AscentRateValues {
  readonly depth: number;
  readonly times: readonly number[];
  readonly gas: Gas;
  readonly factors: GradientFactors;
  readonly rate: number;
}
export const ASCENT_RATE: Choices<AscentRateValues> = {
  depth: depth(36),
  times: listOf(amount(10, 0.1, 7 * 24 * 60), [10, 20, 30], MOST_CURVES, 1),
  gas,
  factors: factors(0.4, 0.85),
  rate: amount(9, 0.5, 30),
};

export interface GradientFactorValues {
  readonly depth: number;
  readonly time: number;
  readonly gas: Gas;
  readonly figure: 'timeToSurface' | 'noStop' | 'creditedNoStop';
  readonly step: '5' | '2' | '1';
  readonly at: GradientFactors;
}
export const GRADIENT_FACTORS: Choices<GradientFactorValues> = {
  depth: depth(40),
  time: minutes(25),
  gas,
  figure: oneOf('timeToSurface', ['timeToSurface', 'noStop', 'creditedNoStop']),
  step: oneOf('5', ['5', '2', '1']),
  at: factors(0.4, 0.85),
};

export interface ModelsValues {
  /** Models taken off the plot. */
  readonly off: readonly string[];
  readonly at: number;
  readonly depth: number;
  readonly time: number;
  readonly atTime: number;
}
export const MODELS: Choices<ModelsValues> = {
  off: listOf(anyId, [], 20),
  at: depth(30),
  depth: depth(36),
  time: minutes(25),
  atTime: amount(25 * 60, 0, 8 * 24 * 3600),
};

export interface HowSureValues {
  readonly halfTimes: number;
  readonly limits: number;
  readonly gauge: number;
  readonly start: number;
  readonly gas: Gas;
  readonly factors: GradientFactors;
  readonly depth: number;
  readonly time: number;
  readonly at: number;
  readonly atTime: number;
}
/** As far as anything that was fitted may be off in the band. */
export const MOST_OFF = 0.1;
export const MOST_GAUGE_M = 3;
const share = (first: number) => amount(first, 0, MOST_OFF);
export const HOW_SURE: Choices<HowSureValues> = {
  halfTimes: share(USUAL_VARIATION.halfTimes),
  limits: share(USUAL_VARIATION.limits),
  gauge: amount(USUAL_VARIATION.depthM, 0, MOST_GAUGE_M),
  start: share(USUAL_VARIATION.start),
  gas,
  factors: factors(0.85, 0.85),
  depth: depth(36),
  time: minutes(25),
  at: depth(30),
  atTime: amount(25 * 60, 0, 8 * 24 * 3600),
};

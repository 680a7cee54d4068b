import { breathedAt } from '../ascent/breathed';
import type { AscentSite } from '../ascent/plan/schedule';
import type { Dive, Settings, Step } from '../dive/dive';
import type { Gas } from '../physics/gas';
import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';
import { haldane } from '../tissue/loading';

/** Share of a step change that a compartment has followed after some half-times, 0–1: 1 − 2^(−n). */
export function shareAfterHalfTimes(halfTimes: number): number {
  return 1 - 2 ** -halfTimes;
}

export interface StepResponse {
  /** 1–16. */
  readonly compartment: number;
  readonly halfTimeMin: number;
  /** Tension at each of the times asked for, bar. */
  readonly tensionBar: Float64Array;
  /** Share of the step followed at each of the times, 0–1. */
  readonly share: Float64Array;
  /** Minutes after one, two, … six half-times. */
  readonly afterHalfTimesMin: readonly number[];
}

/** "After six half-times": when a compartment is taken to have caught up, at 98.4%. */
export const HALF_TIMES_TO_SETTLE = 6;

/**
 * A step change in the pressure breathed and sixteen answers: each compartment's tension over time, from `startBar`
 * towards `breathedBar`, by Haldane's solution.
 */
export function stepResponses(
  compartments: Compartments,
  gas: 'nitrogen' | 'helium',
  startBar: number,
  breathedBar: number,
  minutes: ArrayLike<number>,
): StepResponse[] {
  const halfTimesMin = gas === 'nitrogen' ? compartments.nitrogenHalfTimeMin : compartments.heliumHalfTimeMin;
  const times = Float64Array.from(minutes);
  return Array.from({ length: COMPARTMENTS }, (_, c) => {
    const halfTimeMin = halfTimesMin[c]!;
    return {
      compartment: c + 1,
      halfTimeMin,
      tensionBar: times.map((t) => haldane(startBar, breathedBar, Math.LN2 / halfTimeMin, t)),
      share: times.map((t) => shareAfterHalfTimes(t / halfTimeMin)),
      afterHalfTimesMin: Array.from({ length: HALF_TIMES_TO_SETTLE }, (_n, n) => (n + 1) * halfTimeMin),
    };
  });
}

/** The step that a diver makes who is settled at one depth and goes at once to another on the same gas: both pressures of nitrogen breathed, bar. */
export function stepBetweenDepths(
  site: AscentSite,
  breathing: Gas,
  fromM: number,
  toM: number,
): { readonly startBar: number; readonly breathedBar: number } {
  const at = (depthM: number) => breathedAt(site, breathing, site.surfaceBar + depthM * site.barPerMetre).nitrogenBar;
  return { startBar: at(fromM), breathedBar: at(toM) };
}

/** Half-times of the slowest compartment after which a diver counts as settled: what is left to go is a billionth. */
const SETTLED_HALF_TIMES = 30;

/** The step as a dive: settled at one depth, at once at another, and there for some minutes. */
export function stepDive(
  settings: Settings,
  { nitrogenHalfTimeMin }: Compartments,
  fromM: number,
  toM: number,
  minutes: number,
): Dive {
  const settledS = SETTLED_HALF_TIMES * Math.max(...nitrogenHalfTimeMin) * 60;
  return {
    settings,
    steps: [
      ...atOnce(0, fromM),
      ...(fromM > 0 ? [stayAt(fromM, settledS)] : []),
      ...atOnce(fromM, toM),
      stayAt(toM, minutes * 60),
    ],
    lines: [],
  };
}

function atOnce(fromM: number, toM: number): Step[] {
  return fromM === toM ? [] : [{ kind: toM > fromM ? 'descend' : 'ascend', toM, durationS: 0 }];
}

function stayAt(depthM: number, durationS: number): Step {
  return { kind: depthM > 0 ? 'stay' : 'interval', durationS };
}

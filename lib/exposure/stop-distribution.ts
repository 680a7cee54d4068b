import { loadAt } from '../ascent/figures';
import { supersaturation, supersaturationOf, type Supersaturation } from '../ascent/supersaturation';
import type { Stop } from '../ascent/plan/schedule';
import type { Dive, GradientFactors } from '../dive/dive';
import { computeTimeline } from '../dive/timeline';
import { COMPARTMENTS } from '../tissue/coefficients';
import { bottomOf, planFrom, plannedDive, type AscentPlan } from './ascent-plan';

/** One way of spreading the stops, and what it leaves in the tissues. */
export interface StopDistribution {
  readonly gradientFactors: GradientFactors;
  readonly stops: readonly Stop[];
  readonly timeToSurfaceMin: number;
  /** The largest supersaturation each of the sixteen meets on the way up: deep stops spare the fast, shallow ones the slow. */
  readonly peaks: readonly number[];
  /** The largest of all at the moment of surfacing. */
  readonly surfacing: Supersaturation;
  readonly plan: AscentPlan;
}

export interface DistributionOptions {
  /** Low gradient factors to try beside the dive's own, 0–1. */
  readonly lows?: readonly number[];
  /** Which dive of the day, from 0; the last unless told. */
  readonly diveNumber?: number;
}

const USUAL_LOWS = [0.2, 0.35, 0.5, 0.65, 0.8];
/** How finely stops are timed so that totals can be made equal, min. */
const FINE_MIN = 1 / 60;
/** A high gradient factor is found to this. */
const GF_END = 1e-4;
/** The way up is sampled every so many seconds to find its highest supersaturations. */
const PEAK_EVERY_S = 10;

/**
 * The stops of a dive spread deeper and shallower, the whole ascent always as long as the dive's own gradient factors
 * make it: for each low gradient factor, the high one that takes the same time, the deepest stops first. Stops are timed
 * to the second here. A low factor is left out where no high one at or above it takes that long, or where 100% still
 * takes longer.
 */
export function stopDistributions(dive: Dive, options: DistributionOptions = {}): StopDistribution[] {
  const { gradientFactors } = dive.settings;
  const lows = [...new Set([...(options.lows ?? USUAL_LOWS), gradientFactors.low])].sort((one, other) => one - other);
  const fine = withFineStops(bottomOf(dive, options.diveNumber));
  const own = distribution(fine, gradientFactors);
  if (!Number.isFinite(own.timeToSurfaceMin)) return [];
  return lows.flatMap((low) => {
    const factors = low === gradientFactors.low ? gradientFactors : factorsTaking(fine, low, own.timeToSurfaceMin);
    return factors ? [distribution(fine, factors)] : [];
  });
}

/** The gradient factors with this low one whose ascent takes so many minutes; the higher the high one, the shorter. */
function factorsTaking(bottom: Dive, low: number, minutes: number): GradientFactors | undefined {
  const takes = (high: number) => planFrom(bottom, { gradientFactors: { low, high } }).schedule.timeToSurfaceMin;
  if (takes(low) < minutes - FINE_MIN || takes(1) > minutes + FINE_MIN) return undefined;
  let [longer, shorter] = [low, 1];
  while (shorter - longer > GF_END) {
    const middle = (longer + shorter) / 2;
    if (takes(middle) > minutes) longer = middle;
    else shorter = middle;
  }
  return { low, high: shorter };
}

function distribution(bottom: Dive, gradientFactors: GradientFactors): StopDistribution {
  const plan = planFrom(bottom, { gradientFactors });
  const timeline = computeTimeline(plannedDive(plan), PEAK_EVERY_S);
  const peaks = Array<number>(COMPARTMENTS).fill(-Infinity);
  for (let i = 0; i < timeline.length; i += 1) {
    if (timeline.timeS[i]! < plan.ascentFromS) continue;
    const load = loadAt(timeline, i);
    for (let c = 0; c < COMPARTMENTS; c += 1)
      peaks[c] = Math.max(peaks[c]!, supersaturationOf(load, c, timeline.ambientBar[i]!));
  }
  const { stops, timeToSurfaceMin } = plan.schedule;
  const surfacing = supersaturation(loadAt(timeline, timeline.length - 1), timeline.surfaceBar);
  return { gradientFactors, stops, timeToSurfaceMin, peaks, surfacing, plan };
}

function withFineStops(bottom: Dive): Dive {
  const { settings } = bottom;
  return { ...bottom, settings: { ...settings, plan: { ...settings.plan, stopRoundingMin: FINE_MIN } } };
}

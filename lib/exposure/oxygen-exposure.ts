import type { Leg } from '../dive/legs';
import type { Timeline } from '../dive/timeline';
import { ambientBarAt } from './gas-depths';
import type { ExposureRate } from './exposure-rate';
import {
  dailyExposureRate,
  LIMITS_END_BAR,
  pulmonaryRate,
  singleExposureRate,
  type PulmonaryExponent,
} from './oxygen-rates';
import { DAY_S } from '../quantity/duration';

/** Half-time in which a single-exposure fraction is commonly taken to fade at the surface, min. Common practice, no source. */
export const SURFACE_HALF_TIME_MIN = 90;

/** What one leg, or one dive, adds: fractions of the NOAA limits (1 is the whole limit) and units of pulmonary dose. */
export interface OxygenAdded {
  readonly single: number;
  readonly daily: number;
  readonly pulmonaryUnits: number;
  readonly peakPO2Bar: number;
}

/** Oxygen at every sample of a timeline, and what each leg and each dive added. */
export interface OxygenExposure {
  readonly pO2Bar: Float64Array;
  /** Fraction of the single-exposure limit; it fades in surface intervals. */
  readonly singleFraction: Float64Array;
  /** Fraction of the 24-hour limit, over the 24 hours before the sample. */
  readonly dailyFraction: Float64Array;
  /** Units of pulmonary dose since the script began; they do not fade. */
  readonly pulmonaryUnits: Float64Array;
  readonly legs: readonly OxygenAdded[];
  readonly dives: readonly OxygenAdded[];
  /** Whether the oxygen pressure ever goes beyond the published limits, so that the fractions are a guess. */
  readonly beyondLimits: boolean;
}

export interface OxygenOptions {
  readonly surfaceHalfTimeMin?: number;
  readonly pulmonaryExponent?: PulmonaryExponent;
}

/**
 * Adds up the oxygen of a timeline in closed form, leg by leg: the samples do not depend on how many there are.
 * The single-exposure fraction halves every 90 min of a surface interval, and only there.
 */
export function oxygenExposureOf(timeline: Timeline, options: OxygenOptions = {}): OxygenExposure {
  const { surfaceHalfTimeMin = SURFACE_HALF_TIME_MIN, pulmonaryExponent = 'diving' } = options;
  const { legs, length, timeS, leg, ambientBar, gases } = timeline;
  const units = pulmonaryRate(pulmonaryExponent);
  const pO2At = (index: number, ambient: number) => gases[legs[index]!.gas]!.o2 * ambient;
  const added = legs.map((one) => addedBy(one, timeline, units));
  const pO2Bar = new Float64Array(length);
  const singleFraction = new Float64Array(length);
  const dailyFraction = new Float64Array(length);
  const pulmonaryUnits = new Float64Array(length);
  const singleStarts = [0];
  const dailyStarts = [0];
  const unitStarts = [0];
  const fadedTo = (start: number, elapsedS: number) => start * 2 ** (-elapsedS / 60 / surfaceHalfTimeMin);
  legs.forEach(({ startS, endS, interval }, i) => {
    const start = singleStarts[i]!;
    singleStarts.push(interval ? fadedTo(start, endS - startS) : start + added[i]!.single);
    dailyStarts.push(dailyStarts[i]! + added[i]!.daily);
    unitStarts.push(unitStarts[i]! + added[i]!.pulmonaryUnits);
  });
  /** What a rate has added since its leg began. */
  const since = (rate: ExposureRate, index: number, bar: number, atS: number) => {
    const startBar = pO2At(index, ambientBarAt(legs[index]!.fromM, timeline));
    return rate.over(startBar, bar, (atS - legs[index]!.startS) / 60);
  };
  const dailySince = dailyBefore(timeline, dailyStarts);
  for (let i = 0; i < length; i += 1) {
    const index = leg[i]!;
    const bar = pO2At(index, ambientBar[i]!);
    pO2Bar[i] = bar;
    const start = singleStarts[index]!;
    const { interval, startS } = legs[index]!;
    singleFraction[i] = interval
      ? fadedTo(start, timeS[i]! - startS)
      : start + since(singleExposureRate, index, bar, timeS[i]!);
    dailyFraction[i] =
      dailyStarts[index]! + since(dailyExposureRate, index, bar, timeS[i]!) - dailySince(timeS[i]! - DAY_S);
    pulmonaryUnits[i] = unitStarts[index]! + since(units, index, bar, timeS[i]!);
  }
  return {
    pO2Bar,
    singleFraction,
    dailyFraction,
    pulmonaryUnits,
    legs: added,
    dives: byDive(legs, added),
    beyondLimits: added.some(({ peakPO2Bar }) => peakPO2Bar > LIMITS_END_BAR),
  };
}

/** Pressures of oxygen a leg begins and ends with, bar. */
function pO2Ends(leg: Leg, timeline: Timeline): readonly [number, number] {
  const { o2 } = timeline.gases[leg.gas]!;
  return [o2 * ambientBarAt(leg.fromM, timeline), o2 * ambientBarAt(leg.toM, timeline)];
}

function addedBy(leg: Leg, timeline: Timeline, units: ExposureRate): OxygenAdded {
  const [fromBar, toBar] = pO2Ends(leg, timeline);
  const minutes = (leg.endS - leg.startS) / 60;
  return {
    single: singleExposureRate.over(fromBar, toBar, minutes),
    daily: dailyExposureRate.over(fromBar, toBar, minutes),
    pulmonaryUnits: units.over(fromBar, toBar, minutes),
    peakPO2Bar: Math.max(fromBar, toBar),
  };
}

/** What of the day's limit had been used by a moment; asked for ever later moments. */
function dailyBefore(timeline: Timeline, starts: readonly number[]): (momentS: number) => number {
  const { legs } = timeline;
  let index = 0;
  return (momentS) => {
    if (momentS <= 0) return 0;
    while (index < legs.length - 1 && legs[index]!.endS <= momentS) index += 1;
    const leg = legs[index]!;
    const [fromBar, toBar] = pO2Ends(leg, timeline);
    const part = (momentS - leg.startS) / (leg.endS - leg.startS);
    return (
      starts[index]! + dailyExposureRate.over(fromBar, fromBar + (toBar - fromBar) * part, (momentS - leg.startS) / 60)
    );
  };
}

function byDive(legs: readonly Leg[], added: readonly OxygenAdded[]): OxygenAdded[] {
  const dives: OxygenAdded[] = [];
  legs.forEach(({ diveNumber, interval }, i) => {
    const sum = dives[diveNumber] ?? { single: 0, daily: 0, pulmonaryUnits: 0, peakPO2Bar: 0 };
    const { single, daily, pulmonaryUnits, peakPO2Bar } = added[i]!;
    dives[diveNumber] = interval
      ? sum
      : {
          single: sum.single + single,
          daily: sum.daily + daily,
          pulmonaryUnits: sum.pulmonaryUnits + pulmonaryUnits,
          peakPO2Bar: Math.max(sum.peakPO2Bar, peakPO2Bar),
        };
  });
  return dives;
}

import { figuresOf, type Figures } from '../../ascent/figures';
import type { Dive, GradientFactors } from '../../dive/dive';
import { computeTimeline, type Timeline } from '../../dive/timeline';
import type { Gas } from '../../physics/gas';
import type { Water } from '../../physics/water';
import { usualStepS } from '../records/check-record';
import type { Recording } from '../records/record';

/** What a unit may be set to, as far as the search tries it. */
export interface UnitSettings {
  readonly gradientFactors: GradientFactors;
  readonly water: Water;
  readonly altitudeM: number;
  readonly gas: Gas;
}

/** How far the model under some settings is from what the unit showed. Root mean squares; undefined where it showed none. */
export interface Misfit {
  readonly noStopMin: number | undefined;
  readonly ceilingM: number | undefined;
  readonly stopDepthM: number | undefined;
  /** All of them together, a minute counting as much as a metre. */
  readonly score: number;
}

/** The unit's figures at samples of a timeline. */
export interface Comparison {
  readonly dive: Dive;
  readonly everyS: number;
  readonly sample: Int32Array;
  /** Minutes and metres; NaN where the unit showed none. */
  readonly noStopMin: Float64Array;
  readonly ceilingM: Float64Array;
  readonly stopDepthM: Float64Array;
  /** Readings of each kind. */
  readonly count: { readonly noStop: number; readonly ceiling: number; readonly stopDepth: number };
  /** The unit shows whole minutes, rounded down. */
  readonly wholeMinutes: boolean;
  /** The longest no-stop time it shows, min; longer ones look the same. */
  readonly capMin: number;
  /** Whether a ceiling or a stop was ever shown: without one the low gradient factor leaves no trace. */
  readonly sawStops: boolean;
}

/** About so many moments are compared: more would say little new and take longer. */
const MOMENTS = 400;
const INTERVAL_EVERY_S = 3600;
/** Longer no-stop times are all "more than 99 min". */
const LONGEST_SHOWN_MIN = 99;

/**
 * Finds the moments at which the unit's figures can be held against the model's.
 * @param offsetS for each recording, what its times are short of the dive's clock
 */
export function comparisonOf(recordings: readonly Recording[], offsetS: readonly number[], dive: Dive): Comparison {
  const divedS = recordings.reduce((sum, { timeS }) => sum + timeS[timeS.length - 1]! - timeS[0]!, 0);
  const stepS = recordings.map(({ timeS }) => usualStepS(timeS)).find((step) => step !== undefined) ?? 1;
  const everyS = Math.max(1, Math.ceil(divedS / MOMENTS / stepS)) * stepS;
  const { timeS: instants } = computeTimeline(dive, everyS, { intervalEveryS: INTERVAL_EVERY_S });
  const sample: number[] = [];
  const noStopMin: number[] = [];
  const ceilingM: number[] = [];
  const stopDepthM: number[] = [];
  recordings.forEach((recording, number) => {
    const { timeS, unit } = recording;
    const offset = offsetS[number]!;
    let at = 0;
    for (let i = 0; i < instants.length; i += 1) {
      const wanted = instants[i]! - offset;
      if (wanted < timeS[0]! - everyS || wanted > timeS[timeS.length - 1]! + everyS) continue;
      while (at + 1 < timeS.length && Math.abs(timeS[at + 1]! - wanted) <= Math.abs(timeS[at]! - wanted)) at += 1;
      if (Math.abs(timeS[at]! - wanted) > Math.min(stepS / 2, 5)) continue;
      const told = [
        (unit.noStopS?.[at] ?? NaN) / 60,
        unit.ceilingM?.[at] ?? NaN,
        unit.stopDepthM?.[at] ?? NaN,
      ] as const;
      if (!told.some(Number.isFinite)) continue;
      sample.push(i);
      noStopMin.push(told[0]);
      ceilingM.push(told[1]);
      stopDepthM.push(told[2]);
    }
  });
  const told = noStopMin.filter(Number.isFinite);
  const longest = Math.max(0, ...told);
  const finite = (values: readonly number[]) => values.filter(Number.isFinite).length;
  return {
    dive,
    everyS,
    sample: Int32Array.from(sample),
    noStopMin: Float64Array.from(noStopMin),
    ceilingM: Float64Array.from(ceilingM),
    stopDepthM: Float64Array.from(stopDepthM),
    count: { noStop: told.length, ceiling: finite(ceilingM), stopDepth: finite(stopDepthM) },
    wholeMinutes: told.length >= 5 && told.every((minutes) => Math.abs(minutes - Math.round(minutes)) < 1e-6),
    capMin:
      told.filter((minutes) => minutes === longest).length >= 3
        ? Math.min(longest, LONGEST_SHOWN_MIN)
        : LONGEST_SHOWN_MIN,
    sawStops: ceilingM.some((depth) => depth > 0) || stopDepthM.some((depth) => depth > 0),
  };
}

/** The timeline a unit set to a water, an altitude and a gas would compute from the recorded depths. */
export function believedTimeline(
  { dive, everyS }: Comparison,
  { water, altitudeM, gas }: Omit<UnitSettings, 'gradientFactors'>,
): Timeline {
  const start = dive.settings.start.kind === 'adapted' ? { kind: 'adapted' as const, altitudeM } : dive.settings.start;
  const settings = { ...dive.settings, water, altitudeM, gas, start };
  return computeTimeline({ ...dive, settings }, everyS, { intervalEveryS: INTERVAL_EVERY_S });
}

/** Holds the model under some gradient factors against the unit. `reuse` is overwritten where it fits. */
export function misfitOf(
  comparison: Comparison,
  timeline: Timeline,
  gradientFactors: GradientFactors,
  reuse?: Figures,
): { misfit: Misfit; figures: Figures } {
  const { settings } = comparison.dive;
  const figures = figuresOf(timeline, { ...settings, gradientFactors }, reuse);
  const { stopStepM, lastStopM } = settings.plan;
  const { sample, wholeMinutes, capMin } = comparison;
  let noStop = 0;
  let ceiling = 0;
  let stop = 0;
  for (let i = 0; i < sample.length; i += 1) {
    const at = sample[i]!;
    const modelCeilingM = figures.ceilingM[at]!;
    const shownMin = comparison.noStopMin[i]!;
    if (shownMin === shownMin) {
      const shows = wholeMinutes ? Math.floor(figures.noStopMin[at]! + 1e-6) : figures.noStopMin[at]!;
      noStop += (Math.min(shows, capMin) - Math.min(shownMin, capMin)) ** 2;
    }
    const shownM = comparison.ceilingM[i]!;
    if (shownM === shownM) ceiling += (modelCeilingM - shownM) ** 2;
    const shownStopM = comparison.stopDepthM[i]!;
    if (shownStopM === shownStopM) {
      const stopM =
        modelCeilingM > 0 ? Math.max(lastStopM, Math.ceil(modelCeilingM / stopStepM - 1e-9) * stopStepM) : 0;
      stop += (stopM - shownStopM) ** 2;
    }
  }
  const { count } = comparison;
  const root = (sum: number, of: number) => (of > 0 ? Math.sqrt(sum / of) : undefined);
  const all = count.noStop + count.ceiling + count.stopDepth;
  return {
    figures,
    misfit: {
      noStopMin: root(noStop, count.noStop),
      ceilingM: root(ceiling, count.ceiling),
      stopDepthM: root(stop, count.stopDepth),
      score: Math.sqrt((noStop + ceiling + stop) / Math.max(1, all)),
    },
  };
}

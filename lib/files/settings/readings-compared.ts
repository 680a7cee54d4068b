import type { Dive } from '../../dive/dive';
import { computeTimeline } from '../../dive/timeline';
import { usualStepS } from '../records/check-record';
import type { Recording } from '../records/record';

/** One kind of figure a unit showed, at the moments compared; NaN where it showed none. */
export interface Shown {
  /** Minutes or metres. */
  readonly values: Float64Array;
  readonly count: number;
  /** What all of its values are whole multiples of, in the same unit: 1 for whole minutes; 0 where there is no such step. */
  readonly step: number;
}

/** Where a moment lies among the samples of a timeline: this part of the way from `sample` to the next. */
export interface Places {
  /** How long after its moment a figure was recorded, s; negative for one recorded early. */
  readonly lateS: number;
  readonly sample: Int32Array;
  readonly part: Float64Array;
}

/** A unit's figures at moments of a dive, ready to be held against a model's. */
export interface Comparison {
  readonly dive: Dive;
  readonly everyS: number;
  /** Moments on the dive's clock, s. */
  readonly atS: Float64Array;
  /** The moments among the timeline's samples, for each delay that is tried, none first. */
  readonly places: readonly Places[];
  readonly noStop: Shown;
  readonly ceiling: Shown;
  readonly stopDepth: Shown;
  /** The longest no-stop time it shows, min; longer ones look the same. */
  readonly capMin: number;
  /** Whether a ceiling or a stop was ever shown: without one the low gradient factor leaves no trace. */
  readonly sawStops: boolean;
}

/** About so many moments are compared: more would say little new and take longer. */
const MOMENTS = 400;
export const INTERVAL_EVERY_S = 3600;
/** Longer no-stop times are all "more than 99 min". */
const LONGEST_SHOWN_MIN = 99;
/** Shallower than this a unit may count itself at the surface and show what it likes there, m. */
const AFLOAT_M = 1.5;
/** Delays that are tried, in samples of the record, and the longest of them, s. */
const DELAYS = [0, -1, -0.5, 0.5, 1, 1.5, 2, 3];
const LONGEST_DELAY_S = 60;
const CEILING_STEPS_M = [3, 1, 0.5, 0.1];

/**
 * Finds the moments at which the unit's figures can be held against the model's.
 * @param offsetS for each recording, what its times are short of the dive's clock
 */
export function comparisonOf(recordings: readonly Recording[], offsetS: readonly number[], dive: Dive): Comparison {
  const divedS = recordings.reduce((sum, { timeS }) => sum + timeS[timeS.length - 1]! - timeS[0]!, 0);
  const stepS = recordings.map(({ timeS }) => usualStepS(timeS)).find((step) => step !== undefined) ?? 1;
  const everyS = Math.max(1, Math.ceil(divedS / MOMENTS / stepS)) * stepS;
  const { timeS: instants } = computeTimeline(dive, everyS, { intervalEveryS: INTERVAL_EVERY_S });
  const atS: number[] = [];
  const told: [number, number, number][] = [];
  recordings.forEach(({ timeS, depthM, unit }, number) => {
    const offset = offsetS[number]!;
    let at = 0;
    let lastTaken = -1;
    for (const instant of instants) {
      const wanted = instant - offset;
      if (wanted < timeS[0]! - everyS || wanted > timeS[timeS.length - 1]! + everyS) continue;
      while (at + 1 < timeS.length && Math.abs(timeS[at + 1]! - wanted) <= Math.abs(timeS[at]! - wanted)) at += 1;
      if (at === lastTaken || Math.abs(timeS[at]! - wanted) > Math.max(stepS, 5) || depthM[at]! < AFLOAT_M) continue;
      const figures = [unit.noStopS?.[at] ?? NaN, unit.ceilingM?.[at] ?? NaN, unit.stopDepthM?.[at] ?? NaN] as const;
      if (!figures.some(Number.isFinite)) continue;
      lastTaken = at;
      atS.push(timeS[at]! + offset);
      told.push([figures[0] / 60, figures[1], figures[2]]);
    }
  });
  const [noStop, ceiling, stopDepth] = ([0, 1, 2] as const).map((kind) => Float64Array.from(told, (one) => one[kind]));
  const moments = Float64Array.from(atS);
  const delaysS = DELAYS.map((samples) => samples * stepS).filter((delay) => Math.abs(delay) <= LONGEST_DELAY_S);
  const over = [...ceiling!, ...stopDepth!].some((depth) => depth > 0);
  return {
    dive,
    everyS,
    atS: moments,
    places: delaysS.map((lateS) => placesOf(instants, moments, lateS)),
    noStop: shown(noStop!, [1]),
    ceiling: shown(ceiling!, CEILING_STEPS_M),
    stopDepth: shown(stopDepth!, []),
    capMin: capOf(noStop!),
    sawStops: over,
  };
}

function placesOf(instants: Float64Array, atS: Float64Array, lateS: number): Places {
  const sample = new Int32Array(atS.length);
  const part = new Float64Array(atS.length);
  let at = 0;
  for (let i = 0; i < atS.length; i += 1) {
    const wanted = Math.max(0, atS[i]! - lateS);
    while (at > 0 && instants[at]! > wanted) at -= 1;
    while (at + 2 < instants.length && instants[at + 1]! <= wanted) at += 1;
    const spanS = instants[at + 1]! - instants[at]!;
    sample[i] = at;
    part[i] = spanS > 0 ? Math.min(1, Math.max(0, (wanted - instants[at]!) / spanS)) : 1;
  }
  return { lateS, sample, part };
}

function shown(values: Float64Array, steps: readonly number[]): Shown {
  const told = values.filter(Number.isFinite);
  const multiple = (step: number) => told.every((value) => Math.abs(value / step - Math.round(value / step)) < 1e-4);
  const step = told.length >= 5 && told.some((value) => value > 0) ? steps.find(multiple) : undefined;
  return { values, count: told.length, step: step ?? 0 };
}

/** Of the longest times, so many in a hundred may be outliers beyond the end of the display. */
const BEYOND_END = 0.04;

/** A longest time that stands there again and again is where the display ends, but for a few outliers beyond it. */
function capOf(noStopMin: Float64Array): number {
  const told = noStopMin.filter(Number.isFinite).sort().reverse();
  const mostBeyond = Math.max(1, told.length * BEYOND_END);
  for (let from = 0; from <= mostBeyond && from < told.length;) {
    let to = from;
    while (told[to] === told[from] && to < told.length) to += 1;
    if (to - from >= 3 && to - from > from) return Math.min(told[from]!, LONGEST_SHOWN_MIN);
    from = to;
  }
  return LONGEST_SHOWN_MIN;
}

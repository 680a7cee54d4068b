import { nitrogenFraction, type Gas } from '../physics/gas';
import { atmosphereBar } from '../physics/atmosphere';
import { barPerMetre } from '../physics/water';
import { lungOffsetBar } from '../tissue/alveolar';
import { COMPARTMENTS, compartments, type Compartments } from '../tissue/coefficients';
import type { Tissues } from '../tissue/tissues';
import type { Dive, Settings } from './dive';
import { fillTensions } from './fill-tensions';
import { legsOf, type Leg } from './legs';
import { reusedFloats } from './reused-array';
import { sampleInstants } from './sample-instants';
import { startingTissues } from './start';

/** What of a dive's settings made its tissues: the place, the lungs and half-times, and what the diver began with. */
type Conditions = Pick<Settings, 'water' | 'altitudeM' | 'start' | 'model' | 'gas'>;

/**
 * What the tissues of a dive did, and nothing else: what is asked of them stands beside it (`ascent/limits.ts`). Sample i has its time, depth and pressure at index i; its sixteen
 * tensions of each gas start at index 16·i. A sample at the very moment of a change belongs to what follows it.
 */
export interface Timeline {
  readonly conditions: Conditions;
  readonly compartments: Compartments;
  readonly surfaceBar: number;
  readonly barPerMetre: number;
  /** Ambient pressure that is not breathed gas, bar (water vapour, at a respiratory quotient of 1). */
  readonly lungOffsetBar: number;
  readonly legs: readonly Leg[];
  /** Legs at which the tissues begin anew, as those of an instrument do that was swapped. */
  readonly freshAtLegs: readonly number[];
  readonly gases: readonly Gas[];
  readonly length: number;
  readonly timeS: Float64Array;
  readonly depthM: Float64Array;
  readonly ambientBar: Float64Array;
  /** Index of the leg under way. */
  readonly leg: Int32Array;
  readonly nitrogenBar: Float64Array;
  readonly heliumBar: Float64Array;
  /** Whether any tissue ever holds helium; where it is false, helium need not be looked at. */
  readonly hasHelium: boolean;
}

export interface TimelineOptions {
  /** A timeline no longer needed, whose memory is written over. */
  readonly reuse?: Timeline | undefined;
  /** Legs (never the first) at which the tissues begin anew, as those of an instrument do that was swapped. */
  readonly freshAtLegs?: readonly number[] | undefined;
  /** Surface intervals may be sampled more sparsely, every so many seconds, since nothing happens fast there. */
  readonly intervalEveryS?: number | undefined;
  /** Sampled at the multiples of these too, s. */
  readonly alsoEveryS?: readonly number[] | undefined;
  /** Half-times and limits to use instead of the published ones the dive's settings name. */
  readonly compartments?: Compartments | undefined;
}

/** The site as pressures: what the surface weighs and what a metre of the water adds, bar. */
export function siteOf(dive: Dive): { readonly surfaceBar: number; readonly barPerMetre: number } {
  return { surfaceBar: atmosphereBar(dive.settings.altitudeM), barPerMetre: barPerMetre(dive.settings.water) };
}

/**
 * Computes the tissues of a dive at every multiple of `everyS` seconds and at every change of step.
 * Constant depth by Haldane's solution, changing depth by Schreiner's: the samples do not depend on how many there are,
 * but for rounding. Throws RangeError if `everyS` is not a positive number.
 *
 * A timeline given to `reuse` must not be read again: while a dive is dragged, asking the system for fresh memory costs
 * more than the arithmetic.
 */
export function computeTimeline(dive: Dive, everyS: number, options: TimelineOptions = {}): Timeline {
  const { reuse, freshAtLegs = [], intervalEveryS = everyS, alsoEveryS = [] } = options;
  for (const seconds of [everyS, intervalEveryS, ...alsoEveryS]) {
    if (!(seconds > 0) || !Number.isFinite(seconds))
      throw new RangeError('a timeline needs a positive number of seconds');
  }
  const { model } = dive.settings;
  const coefficients = options.compartments ?? compartments(model.variant, model.first);
  const { legs, gases, endS } = legsOf(dive);
  const { timeS, leg, firstOfLeg } = sampleInstants(legs, endS, everyS, intervalEveryS, reuse, alsoEveryS);
  const length = timeS.length;
  const start = startingTissues(dive.settings, coefficients);
  const hasHelium = gases.some((gas) => gas.he > 0) || start.heliumBar.some((tension) => tension > 0);
  const usedHelium = reuse?.hasHelium ? reuse.heliumBar : undefined;
  const timeline: Timeline = {
    conditions: dive.settings,
    compartments: coefficients,
    ...siteOf(dive),
    lungOffsetBar: lungOffsetBar(model.respiratoryQuotient),
    legs,
    freshAtLegs,
    gases,
    length,
    timeS,
    depthM: reusedFloats(reuse?.depthM, length),
    ambientBar: reusedFloats(reuse?.ambientBar, length),
    leg,
    nitrogenBar: reusedFloats(reuse?.nitrogenBar, length * COMPARTMENTS),
    heliumBar: hasHelium ? reusedFloats(usedHelium, length * COMPARTMENTS) : zeros(length * COMPARTMENTS),
    hasHelium,
  };
  fillDepths(timeline, firstOfLeg);
  const common = { ...timeline, firstOfLeg };
  fillTensions(timeline.nitrogenBar, {
    ...common,
    start: start.nitrogenBar,
    k: coefficients.nitrogenK,
    fractions: gases.map(nitrogenFraction),
  });
  if (hasHelium) {
    fillTensions(timeline.heliumBar, {
      ...common,
      start: start.heliumBar,
      k: coefficients.heliumK,
      fractions: gases.map(({ he }) => he),
    });
  }
  return timeline;
}

let noHelium = new Float64Array(0);

/** Zeros for the helium of dives without any: never written to, so all of them may share it. */
function zeros(length: number): Float64Array {
  if (noHelium.length < length) noHelium = new Float64Array(length);
  return noHelium.subarray(0, length);
}

/** The tissues at one sample, as a copy. */
export function tissuesAt(timeline: Timeline, sample: number): Tissues {
  const from = sample * COMPARTMENTS;
  return {
    nitrogenBar: timeline.nitrogenBar.slice(from, from + COMPARTMENTS),
    heliumBar: timeline.heliumBar.slice(from, from + COMPARTMENTS),
  };
}

/** The last sample at or before a time, seconds; the first one for any earlier time. */
export function sampleAt(timeline: Timeline, timeS: number): number {
  let low = 0;
  let high = timeline.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (timeline.timeS[middle]! <= timeS) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The time of the first sample at or after a moment, s; the moment itself where there is none. */
export function sampleFromS({ timeS }: Timeline, momentS: number): number {
  return timeS.find((sampleS) => sampleS >= momentS) ?? momentS;
}

/** The gas breathed at a sample. */
export function gasAt(timeline: Timeline, sample: number): Gas {
  return timeline.gases[timeline.legs[timeline.leg[sample]!]!.gas]!;
}

function fillDepths(
  { legs, timeS, depthM, ambientBar, surfaceBar, barPerMetre: perMetre }: Timeline,
  firstOfLeg: readonly number[],
): void {
  legs.forEach(({ startS, endS, fromM, toM }, index) => {
    const first = firstOfLeg[index]!;
    const last = firstOfLeg[index + 1]!;
    if (fromM === toM || endS === startS) {
      depthM.fill(toM, first, last);
      ambientBar.fill(surfaceBar + toM * perMetre, first, last);
    } else {
      const perSecond = (toM - fromM) / (endS - startS);
      for (let i = first; i < last; i += 1) {
        const depth = fromM + perSecond * (timeS[i]! - startS);
        depthM[i] = depth;
        ambientBar[i] = surfaceBar + depth * perMetre;
      }
    }
  });
  const { toM } = legs.at(-1)!;
  depthM[depthM.length - 1] = toM;
  ambientBar[depthM.length - 1] = surfaceBar + toM * perMetre;
}

import { nitrogenFraction, type Gas } from '../physics/gas';
import { atmosphereBar } from '../physics/atmosphere';
import { barPerMetre } from '../physics/water';
import { lungOffsetBar } from '../tissue/alveolar';
import { COMPARTMENTS, compartments, type Compartments } from '../tissue/coefficients';
import type { Tissues } from '../tissue/tissues';
import type { Dive } from './dive';
import { legsOf, type Leg } from './legs';
import { startingTissues } from './start';

/**
 * What the model says of a dive, and nothing else. Sample i has its time, depth and pressure at index i; its sixteen
 * tensions of each gas start at index 16·i. A sample at the very moment of a change belongs to what follows it.
 */
export interface Timeline {
  readonly dive: Dive;
  readonly compartments: Compartments;
  readonly surfaceBar: number;
  readonly barPerMetre: number;
  /** Ambient pressure that is not breathed gas, bar (water vapour, at a respiratory quotient of 1). */
  readonly lungOffsetBar: number;
  readonly legs: readonly Leg[];
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
  readonly reuse?: Timeline | undefined;
  readonly freshAtLegs?: readonly number[] | undefined;
  readonly intervalEveryS?: number | undefined;
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
 * `reuse` is a timeline no longer needed, whose arrays are written over where they fit: while a dive is dragged, asking
 * the system for fresh memory would cost more than the arithmetic. Surface intervals may be sampled more sparsely, every
 * `intervalEveryS` seconds, since nothing happens fast there. At the legs numbered in `freshAtLegs` the tissues
 * begin anew, as those of an instrument do that was swapped or has lost its memory.
 */
export function computeTimeline(
  dive: Dive,
  everyS: number,
  { reuse, freshAtLegs = [], intervalEveryS = everyS }: TimelineOptions = {},
): Timeline {
  if (!(everyS > 0) || !Number.isFinite(everyS)) throw new RangeError('a timeline needs a positive number of seconds');
  const { model } = dive.settings;
  const site = siteOf(dive);
  const coefficients = compartments(model.variant, model.first);
  const offsetBar = lungOffsetBar(model.respiratoryQuotient);
  const { legs, gases, endS } = legsOf(dive);
  const instants = sampleInstants(legs, endS, everyS, intervalEveryS);
  const length = instants.timeS.length;
  const start = startingTissues(dive.settings, coefficients);
  const hasHelium = gases.some((gas) => gas.he > 0) || start.heliumBar.some((tension) => tension > 0);
  const timeline: Timeline = {
    dive,
    compartments: coefficients,
    ...site,
    lungOffsetBar: offsetBar,
    legs,
    gases,
    length,
    timeS: instants.timeS,
    depthM: room(reuse?.depthM, length),
    ambientBar: room(reuse?.ambientBar, length),
    leg: instants.leg,
    nitrogenBar: room(reuse?.nitrogenBar, length * COMPARTMENTS),
    heliumBar: hasHelium ? room(reuse?.hasHelium ? reuse.heliumBar : undefined, length * COMPARTMENTS) : zeros(length * COMPARTMENTS),
    hasHelium,
  };
  fillDepths(timeline);
  const fresh = new Set(freshAtLegs);
  fillTensions(timeline, timeline.nitrogenBar, start.nitrogenBar, coefficients.nitrogenK, gases.map(nitrogenFraction), everyS, fresh);
  if (hasHelium) {
    fillTensions(timeline, timeline.heliumBar, start.heliumBar, coefficients.heliumK, gases.map((gas) => gas.he), everyS, fresh);
  }
  return timeline;
}

function room(used: Float64Array | undefined, length: number): Float64Array {
  return used && used.length === length ? used : new Float64Array(length);
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

/** The gas breathed at a sample. */
export function gasAt(timeline: Timeline, sample: number): Gas {
  return timeline.gases[timeline.legs[timeline.leg[sample]!]!.gas]!;
}

const SAME_INSTANT_S = 1e-6;

function sampleInstants(legs: readonly Leg[], endS: number, everyS: number, intervalEveryS: number) {
  const room = Math.ceil(endS / Math.min(everyS, intervalEveryS)) + legs.length + 2;
  const timeS = new Float64Array(room);
  const leg = new Int32Array(room);
  let count = 0;
  legs.forEach((current, index) => {
    const stepS = current.interval ? intervalEveryS : everyS;
    timeS[count] = current.startS;
    leg[count] = index;
    count += 1;
    let tick = Math.floor((current.startS + SAME_INSTANT_S) / stepS) + 1;
    for (let t = tick * stepS; t < current.endS - SAME_INSTANT_S; tick += 1, t = tick * stepS) {
      timeS[count] = t;
      leg[count] = index;
      count += 1;
    }
  });
  timeS[count] = endS;
  leg[count] = Math.max(0, legs.length - 1);
  count += 1;
  return { timeS: timeS.slice(0, count), leg: leg.slice(0, count) };
}

function fillDepths({ length, timeS, leg, legs, depthM, ambientBar, surfaceBar, barPerMetre: perMetre }: Timeline): void {
  for (let i = 0; i < length; i += 1) {
    const { startS, endS, fromM, toM } = legs[leg[i]!]!;
    const part = timeS[i]! >= endS ? 1 : (timeS[i]! - startS) / (endS - startS);
    const depth = fromM === toM ? fromM : fromM + (toM - fromM) * part;
    depthM[i] = depth;
    ambientBar[i] = surfaceBar + depth * perMetre;
  }
}

/** Carries one gas's tensions from sample to sample, from `start` on and anew from `start` at each fresh leg. */
function fillTensions(
  timeline: Timeline,
  tensions: Float64Array,
  start: Float64Array,
  k: Float64Array,
  fractions: readonly number[],
  everyS: number,
  freshAtLegs: ReadonlySet<number>,
): void {
  tensions.set(start);
  const { length, timeS, ambientBar, depthM, leg, legs, lungOffsetBar: offset } = timeline;
  const wholeStep = k.map((rate) => Math.exp((-rate * everyS) / 60));
  const oddStep = new Float64Array(COMPARTMENTS);
  for (let i = 1; i < length; i += 1) {
    if (leg[i] !== leg[i - 1] && freshAtLegs.has(leg[i]!)) {
      tensions.set(start, i * COMPARTMENTS);
      continue;
    }
    const stepS = timeS[i]! - timeS[i - 1]!;
    let left = wholeStep;
    if (Math.abs(stepS - everyS) > 1e-9) {
      for (let c = 0; c < COMPARTMENTS; c += 1) oddStep[c] = Math.exp((-k[c]! * stepS) / 60);
      left = oddStep;
    }
    const fraction = fractions[legs[leg[i - 1]!]!.gas]!;
    const alveolar = (ambientBar[i - 1]! - offset) * fraction;
    const from = (i - 1) * COMPARTMENTS;
    const to = i * COMPARTMENTS;
    if (depthM[i] === depthM[i - 1]) {
      for (let c = 0; c < COMPARTMENTS; c += 1) {
        tensions[to + c] = alveolar + (tensions[from + c]! - alveolar) * left[c]!;
      }
    } else {
      const alveolarEnd = (ambientBar[i]! - offset) * fraction;
      const rate = ((alveolarEnd - alveolar) / stepS) * 60;
      for (let c = 0; c < COMPARTMENTS; c += 1) {
        const lag = rate / k[c]!;
        tensions[to + c] = alveolarEnd - lag + (tensions[from + c]! - alveolar + lag) * left[c]!;
      }
    }
  }
}

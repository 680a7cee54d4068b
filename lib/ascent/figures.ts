import { nitrogenFraction } from '../physics/gas';
import { COMPARTMENTS } from '../tissue/coefficients';
import { gasAt, tissuesAt, type Timeline } from '../dive/timeline';
import { breathedAt } from './breathed';
import { ceilingAtGf, ceilingOnLine, firstStopM, SAME_DEPTH_M, type Ceiling, type Load } from './ceiling';
import { creditedNoStopMin } from './credited-no-stop';
import { deepestToleratedBar, leaderOfTolerated, minutesToLimit, nitrogenLimits, noStopLeaderOf } from './nitrogen-figures';
import { noStop, type NoStop } from './no-stop';
import { ascentPlanner, type Schedule } from './schedule';
import { supersaturation, type Supersaturation } from './supersaturation';

/** What the model says at every sample of a timeline: one figure per sample, leaders 1–16, 0 where there is none. */
export interface Figures {
  /** On the line from low to high; `AtLow` and `AtHigh` under one gradient factor alone. */
  readonly ceilingM: Float64Array;
  readonly ceilingAtLowM: Float64Array;
  readonly ceilingAtHighM: Float64Array;
  readonly ceilingLeader: Uint8Array;
  /** Where the line from low to high begins; 0 without one. */
  readonly firstStopM: Float64Array;
  /** Infinity where no compartment will ever reach its limit. */
  readonly noStopMin: Float64Array;
  readonly noStopLeader: Uint8Array;
}

/** The tensions at one sample as the ascent functions take them; no copy is made. */
export function loadAt(timeline: Timeline, sample: number): Load {
  const { compartments, nitrogenBar, heliumBar, surfaceBar, barPerMetre } = timeline;
  return { compartments, nitrogenBar, heliumBar, at: sample * COMPARTMENTS, surfaceBar, barPerMetre };
}

/**
 * Works out the figures of a whole timeline. The first stop is fixed when an ascent begins and is let go again below
 * it, so a sample's figures do not depend on how many samples there are.
 */
export function figuresOf(timeline: Timeline, reuse?: Figures): Figures {
  const { length, legs, leg, depthM, dive } = timeline;
  const { gradientFactors, plan } = dive.settings;
  const figures = reuse && reuse.ceilingM.length === length ? reuse : emptyFigures(length);
  const at = timeline.hasHelium ? mixedGasInstant(timeline) : nitrogenInstant(timeline);
  const oneLine = gradientFactors.low === gradientFactors.high;
  let firstStop = 0;
  let ascendingIn = -1;
  for (let i = 0; i < length; i += 1) {
    const lowM = at.ceilingM(i, 'low');
    const legIndex = leg[i]!;
    const ascending = legs[legIndex]!.toM < legs[legIndex]!.fromM;
    const needed = firstStopM(lowM, plan);
    if (needed === 0) firstStop = 0;
    else if (ascendingIn === legIndex || depthM[i]! <= firstStop + SAME_DEPTH_M) firstStop = Math.max(firstStop, needed);
    else firstStop = needed;
    ascendingIn = ascending ? legIndex : -1;
    const highM = oneLine ? lowM : at.ceilingM(i, 'high');
    figures.firstStopM[i] = firstStop;
    figures.ceilingAtLowM[i] = lowM;
    figures.ceilingAtHighM[i] = highM;
    if (highM > 0) {
      const ceiling = oneLine ? { depthM: lowM, leader: at.ceilingLeader(i) } : ceilingOnLine(at.load(i), gradientFactors, firstStop);
      figures.ceilingM[i] = ceiling.depthM;
      figures.ceilingLeader[i] = ceiling.leader;
      figures.noStopMin[i] = 0;
      figures.noStopLeader[i] = ceiling.leader;
    } else {
      figures.ceilingM[i] = 0;
      figures.ceilingLeader[i] = 0;
      at.noStop(i, figures);
    }
  }
  return figures;
}

function emptyFigures(length: number): Figures {
  return {
    ceilingM: new Float64Array(length),
    ceilingAtLowM: new Float64Array(length),
    ceilingAtHighM: new Float64Array(length),
    ceilingLeader: new Uint8Array(length),
    firstStopM: new Float64Array(length),
    noStopMin: new Float64Array(length),
    noStopLeader: new Uint8Array(length),
  };
}

/** How one sample's figures are found; there are two ways, with and without helium, that agree. */
interface Instant {
  load(sample: number): Load;
  ceilingM(sample: number, under: 'low' | 'high'): number;
  /** Leader of the ceiling at `low`. */
  ceilingLeader(sample: number): number;
  noStop(sample: number, into: Figures): void;
}

function mixedGasInstant(timeline: Timeline): Instant {
  const { gradientFactors } = timeline.dive.settings;
  return {
    load: (sample) => loadAt(timeline, sample),
    ceilingM: (sample, under) => ceilingAtGf(loadAt(timeline, sample), gradientFactors[under]).depthM,
    ceilingLeader: (sample) => ceilingAtGf(loadAt(timeline, sample), gradientFactors.low).leader,
    noStop(sample, into) {
      const breathed = breathedAt(timeline, gasAt(timeline, sample), timeline.ambientBar[sample]!);
      const left = noStop(loadAt(timeline, sample), breathed, gradientFactors.high);
      into.noStopMin[sample] = left.minutes;
      into.noStopLeader[sample] = left.leader;
    },
  };
}

function nitrogenInstant(timeline: Timeline): Instant {
  const { nitrogenBar, ambientBar, surfaceBar, barPerMetre, lungOffsetBar, compartments, legs, leg } = timeline;
  const { low, high } = timeline.dive.settings.gradientFactors;
  const limits = { low: nitrogenLimits(compartments, low, surfaceBar), high: nitrogenLimits(compartments, high, surfaceBar) };
  const { surfaceLimitBar } = limits.high;
  const fractions = timeline.gases.map(nitrogenFraction);
  const k = compartments.nitrogenK;
  let likely = 0;
  const tolerated = (sample: number, under: 'low' | 'high') =>
    deepestToleratedBar(nitrogenBar, sample * COMPARTMENTS, limits[under], surfaceBar);
  return {
    load: (sample) => loadAt(timeline, sample),
    ceilingM: (sample, under) => (tolerated(sample, under) - surfaceBar) / barPerMetre,
    ceilingLeader: (sample) =>
      leaderOfTolerated(nitrogenBar, sample * COMPARTMENTS, limits.low, tolerated(sample, 'low'), surfaceBar),
    noStop(sample, into) {
      const from = sample * COMPARTMENTS;
      const breathedBar = (ambientBar[sample]! - lungOffsetBar) * fractions[legs[leg[sample]!]!.gas]!;
      likely = noStopLeaderOf(nitrogenBar, from, k, surfaceLimitBar, breathedBar, likely);
      into.noStopLeader[sample] = likely;
      into.noStopMin[sample] =
        likely === 0 ? Infinity : minutesToLimit(nitrogenBar[from + likely - 1]!, breathedBar, surfaceLimitBar[likely - 1]!, k[likely - 1]!);
    },
  };
}

/** Everything the model says at one sample, including what is too dear to work out for every sample. */
export interface FiguresNow {
  readonly ceiling: Ceiling;
  readonly ceilingAtLow: Ceiling;
  readonly ceilingAtHigh: Ceiling;
  readonly noStop: NoStop;
  /** No-stop time with the gas lost on the way up counted, min; Infinity beyond the cap. */
  readonly creditedNoStopMin: number;
  readonly supersaturation: Supersaturation;
  readonly surfacingSupersaturation: Supersaturation;
  readonly schedule: Schedule;
  /** The compartment that sets the figure a person looks at: the ceiling, else the no-stop time, else surfacing. */
  readonly leadingCompartment: number;
}

export function figuresAt(timeline: Timeline, figures: Figures, sample: number): FiguresNow {
  const { gradientFactors } = timeline.dive.settings;
  const load = loadAt(timeline, sample);
  const depthM = timeline.depthM[sample]!;
  const gas = gasAt(timeline, sample);
  const planAscent = ascentPlanner(timeline.dive.settings, timeline);
  const start = { depthM, gas, ...tissuesAt(timeline, sample), at: 0, fixedFirstStopM: figures.firstStopM[sample]! };
  const ceiling = { depthM: figures.ceilingM[sample]!, leader: figures.ceilingLeader[sample]! };
  const left = { minutes: figures.noStopMin[sample]!, leader: figures.noStopLeader[sample]! };
  const surfacing = supersaturation(load, timeline.surfaceBar);
  return {
    ceiling,
    ceilingAtLow: ceilingAtGf(load, gradientFactors.low),
    ceilingAtHigh: ceilingAtGf(load, gradientFactors.high),
    noStop: left,
    creditedNoStopMin: creditedNoStopMin(planAscent, timeline, start),
    supersaturation: supersaturation(load, timeline.ambientBar[sample]!),
    surfacingSupersaturation: surfacing,
    schedule: planAscent(start),
    leadingCompartment: ceiling.leader || left.leader || surfacing.leader,
  };
}

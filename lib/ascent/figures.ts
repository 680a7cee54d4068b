import { COMPARTMENTS } from '../tissue/coefficients';
import { reusedBytes, reusedFloats } from '../dive/reused-array';
import type { Timeline } from '../dive/timeline';
import { ascentStartAt } from './plan/ascent-start';
import { fillAnchors } from './anchors';
import { ceilingAtGf, type Ceiling, type Load } from './ceiling';
import { creditedNoStopMin } from './credited-no-stop';
import { mixedGasCeilings, mixedGasCeilingsOnLine, mixedGasNoStops } from './mixed-gas-figures';
import { nitrogenCeilings, nitrogenCeilingsOnLine, nitrogenNoStops } from './nitrogen-figures';
import type { Limits } from './limits';
import type { NoStop } from './no-stop';
import { ascentPlanner, type Schedule } from './plan/schedule';
import { supersaturation, type Supersaturation } from './supersaturation';

/** What the model says at every sample of a timeline seen under limits: one figure per sample, leaders 1–16, 0 where there is none. */
export interface Figures {
  readonly limits: Limits;
  /** On the line from low to high; `AtLow` and `AtHigh` under one gradient factor alone. */
  readonly ceilingM: Float64Array;
  readonly ceilingAtLowM: Float64Array;
  readonly ceilingAtHighM: Float64Array;
  readonly ceilingLeader: Uint8Array;
  /** The anchor of the line from low to high: its depth from which on `low` holds; 0 while free, and where low is high. */
  readonly anchorM: Float64Array;
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
 * Works out the figures of a whole timeline under limits, one array each of the timeline's length. A
 * sample's figures don't depend on how many samples there are. Figures given to `reuse` must not be read again.
 */
export function figuresOf(timeline: Timeline, limits: Limits, reuse?: Figures): Figures {
  const { gradientFactors } = limits;
  const { low, high } = gradientFactors;
  const figures = roomForFigures(timeline.length, limits, reuse);
  const { ceilingAtLowM, ceilingAtHighM, ceilingM, ceilingLeader, noStopMin, noStopLeader } = figures;
  const way = timeline.hasHelium ? MIXED_GAS : NITROGEN;
  way.ceilings(timeline, high, ceilingAtHighM, ceilingLeader);
  if (low === high) ceilingAtLowM.set(ceilingAtHighM);
  else way.ceilings(timeline, low, ceilingAtLowM);
  fillAnchors(
    timeline,
    gradientFactors,
    { atLowM: ceilingAtLowM, atHighM: ceilingAtHighM, highLeader: ceilingLeader },
    figures.anchorM,
  );
  if (low === high) ceilingM.set(ceilingAtHighM);
  else way.ceilingsOnLine(timeline, gradientFactors, figures.anchorM, ceilingM, ceilingLeader);
  way.noStops(timeline, high, ceilingM, figures);
  for (let i = 0; i < timeline.length; i += 1) {
    if (ceilingM[i]! > 0) {
      noStopMin[i] = 0;
      noStopLeader[i] = ceilingLeader[i]!;
    }
  }
  return figures;
}

/** The two ways to work figures out, which agree: for tissues that hold nitrogen only, and for any. */
const NITROGEN = { ceilings: nitrogenCeilings, ceilingsOnLine: nitrogenCeilingsOnLine, noStops: nitrogenNoStops };
const MIXED_GAS = { ceilings: mixedGasCeilings, ceilingsOnLine: mixedGasCeilingsOnLine, noStops: mixedGasNoStops };

function roomForFigures(length: number, limits: Limits, reuse?: Figures): Figures {
  return {
    limits,
    ceilingM: reusedFloats(reuse?.ceilingM, length),
    ceilingAtLowM: reusedFloats(reuse?.ceilingAtLowM, length),
    ceilingAtHighM: reusedFloats(reuse?.ceilingAtHighM, length),
    ceilingLeader: reusedBytes(reuse?.ceilingLeader, length),
    anchorM: reusedFloats(reuse?.anchorM, length),
    noStopMin: reusedFloats(reuse?.noStopMin, length),
    noStopLeader: reusedBytes(reuse?.noStopLeader, length),
  };
}

/** Everything the model says at one sample, including what is too dear to work out for every sample. */
export interface FiguresNow {
  readonly limits: Limits;
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

/** All figures at one sample of a timeline, under the limits its `figures` were worked out for. */
export function figuresAt(timeline: Timeline, figures: Figures, sample: number): FiguresNow {
  const { gradientFactors } = figures.limits;
  const load = loadAt(timeline, sample);
  const planAscent = ascentPlanner(figures.limits, timeline);
  const start = ascentStartAt(timeline, figures, sample);
  const ceiling = { depthM: figures.ceilingM[sample]!, leader: figures.ceilingLeader[sample]! };
  const left = { minutes: figures.noStopMin[sample]!, leader: figures.noStopLeader[sample]! };
  const surfacing = supersaturation(load, timeline.surfaceBar);
  return {
    limits: figures.limits,
    ceiling,
    ceilingAtLow: ceilingAtGf(load, gradientFactors.low),
    ceilingAtHigh: ceilingAtGf(load, gradientFactors.high),
    noStop: left,
    creditedNoStopMin: creditedNoStopMin(figures.limits, timeline, start, planAscent),
    supersaturation: supersaturation(load, timeline.ambientBar[sample]!),
    surfacingSupersaturation: surfacing,
    schedule: planAscent(start),
    leadingCompartment: ceiling.leader || left.leader || surfacing.leader,
  };
}

import { figuresOf, type Figures } from '../ascent/figures';
import type { Dive } from '../dive/dive';
import { computeTimeline, type Timeline } from '../dive/timeline';
import type { Tissues } from '../tissue/tissues';
import { curveSite, rested } from './curve-site';
import { noStopCurve, type NoStopConditions } from './no-stop-curve';
import { variantsOf, variedCompartments, type Variant, type Variation } from './variation';

/**
 * A figure as a band, one for each depth or time: the middle is the model's own, low and high the furthest that any
 * variation tried took it. A band is not a margin of safety: what the model leaves out is
 * in none of them.
 */
export interface Band {
  /** Depths, m, or times, s. */
  readonly at: Float64Array;
  readonly low: Float64Array;
  readonly middle: Float64Array;
  readonly high: Float64Array;
}

/** No-stop time at each depth, min, as a band. Infinity where no limit would be reached. Depths off the gauge never go above the surface. */
export function noStopBand(conditions: NoStopConditions, depthsM: ArrayLike<number>, variation: Variation): Band {
  const at = Float64Array.from(depthsM);
  const band = bandOf(variation, (variant) => {
    const site = { ...conditions.site, compartments: variedCompartments(conditions.site.compartments, variant) };
    const tissues = variedTissues(conditions.tissues, variant);
    return noStopCurve(
      { ...conditions, site, tissues },
      at.map((depthM) => reallyAt(depthM, variant)),
    ).minutes;
  });
  return { at, ...band };
}

/** The ceiling of a dive over time, m, as a band; `everyS` as for `computeTimeline`. */
export function ceilingBand(dive: Dive, everyS: number, variation: Variation): Band {
  const { compartments } = curveSite(dive.settings);
  const start = rested(dive.settings);
  let timeline: Timeline | undefined;
  let figures: Figures | undefined;
  const band = bandOf(variation, (variant) => {
    timeline = computeTimeline(variedDive(dive, start, variant), everyS, {
      compartments: variedCompartments(compartments, variant),
      reuse: timeline,
    });
    figures = figuresOf(timeline, dive.settings, figures);
    return figures.ceilingM;
  });
  // The variants leave the times alone, so the last one's are everyone's.
  return { at: timeline!.timeS, ...band };
}

function bandOf(varied: Variation, figuresOfVariant: (variant: Variant) => Float64Array): Omit<Band, 'at'> {
  const [asSaid, ...others] = variantsOf(varied);
  const middle = figuresOfVariant(asSaid!).slice();
  const low = middle.slice();
  const high = middle.slice();
  for (const variant of others) {
    const figures = figuresOfVariant(variant);
    for (let i = 0; i < figures.length; i += 1) {
      if (figures[i]! < low[i]!) low[i] = figures[i]!;
      if (figures[i]! > high[i]!) high[i] = figures[i]!;
    }
  }
  return { low, middle, high };
}

/** Where a diver really is whose gauge shows a depth: the surface is the surface whatever it shows. */
function reallyAt(depthM: number, { addedDepthM }: Variant): number {
  return depthM === 0 ? 0 : Math.max(0, depthM + addedDepthM);
}

function variedTissues({ nitrogenBar, heliumBar }: Tissues, { start }: Variant): Tissues {
  return { nitrogenBar: nitrogenBar.map((bar) => bar * start), heliumBar: heliumBar.map((bar) => bar * start) };
}

function variedDive(dive: Dive, tissues: Tissues, variant: Variant): Dive {
  const { nitrogenBar, heliumBar } = variedTissues(tissues, variant);
  const steps = dive.steps.map((step) => ('toM' in step ? { ...step, toM: reallyAt(step.toM, variant) } : step));
  return {
    ...dive,
    steps,
    settings: {
      ...dive.settings,
      start: { kind: 'tensions', nitrogenBar: [...nitrogenBar], heliumBar: [...heliumBar] },
    },
  };
}

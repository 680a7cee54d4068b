import { figuresOf, type Figures } from '../../ascent/figures';
import type { Dive, GradientFactors } from '../../dive/dive';
import { legsOf } from '../../dive/legs';
import { computeTimeline, type Timeline } from '../../dive/timeline';
import type { Gas } from '../../physics/gas';
import type { Water } from '../../physics/water';
import { INTERVAL_EVERY_S, type Comparison, type Places, type Shown } from './readings-compared';

/** What a unit may be set to, as far as the search tries it. */
export interface UnitSettings {
  readonly gradientFactors: GradientFactors;
  readonly water: Water;
  readonly altitudeM: number;
  readonly gas: Gas;
  /** The dive of the record, its first being 0, before which the unit lost what it knew of the tissues; 0 for none. */
  readonly forgotBefore: number;
}

export type Site = Omit<UnitSettings, 'gradientFactors'>;

/** How far the model under some settings is from what the unit showed. Root mean squares without outliers; undefined where it showed none. */
export interface Misfit {
  readonly noStopMin: number | undefined;
  readonly ceilingM: number | undefined;
  readonly stopDepthM: number | undefined;
  /** Mean of the squares of all of them, a minute counting as much as a metre, each bounded by `FARTHEST`. */
  readonly loss: number;
  /** The same without outliers, as if they had not been read. */
  readonly core: number;
  /** Readings that are off by more than `FARTHEST`: of no more weight, however far. */
  readonly outliers: number;
  /** How late the figures stand in the record, s, where they fit best. */
  readonly lateS: number;
}

/** No reading weighs more than one that is so far off, min or m. */
export const FARTHEST = 1.5;
/** A delay has to make the mean square so much smaller to be taken for one. */
const DELAY_PAYS = 0.004;

/** The timeline a unit set to a water, an altitude and a gas would compute from the recorded depths. */
export function believedTimeline({ dive, everyS }: Comparison, site: Site): Timeline {
  return computeTimeline(believedDive(dive, site), everyS, {
    intervalEveryS: INTERVAL_EVERY_S,
    freshAtLegs: legsForgottenAt(dive, site.forgotBefore),
  });
}

/** The dive as a unit set otherwise takes it to be; one that is adapted to its altitude takes the diver to be, too. */
export function believedDive(dive: Dive, { water, altitudeM, gas, ...unit }: Site | UnitSettings): Dive {
  const start = dive.settings.start.kind === 'adapted' ? { kind: 'adapted' as const, altitudeM } : dive.settings.start;
  const { gradientFactors = dive.settings.gradientFactors } = unit as Partial<UnitSettings>;
  return { ...dive, settings: { ...dive.settings, water, altitudeM, gas, start, gradientFactors } };
}

/** The leg at which a unit's tissues begin anew, where it forgets; an empty list where it does not. */
export function legsForgottenAt(dive: Dive, forgotBefore: number): readonly number[] {
  const first = forgotBefore === 0 ? -1 : legsOf(dive).legs.findIndex(({ diveNumber }) => diveNumber === forgotBefore);
  return first < 0 ? [] : [first];
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
  const noStopMin = figures.noStopMin.map((minutes) => Math.min(minutes, comparison.capMin));
  let best: Misfit | undefined;
  for (const places of comparison.places) {
    const misfit = misfitAt(comparison, places, noStopMin, figures.ceilingM);
    if (!best || misfit.loss < best.loss - (best.lateS === 0 ? DELAY_PAYS : 0)) best = misfit;
  }
  return { figures, misfit: best! };
}

interface Sum {
  squares: number;
  count: number;
  outliers: number;
}

function misfitAt(comparison: Comparison, places: Places, noStopMin: Float64Array, ceilingM: Float64Array): Misfit {
  const { noStop, ceiling, stopDepth, capMin, dive } = comparison;
  const { stopStepM, lastStopM } = dive.settings.plan;
  const minutes = rounded(noStop, (i, under, over) => {
    const shown = noStop.values[i]!;
    const model = valueAt(noStopMin, places, i);
    return shown >= capMin && model >= capMin ? 0 : outside(model, shown - under, shown + over);
  });
  const metres = rounded(ceiling, (i, under, over) => {
    const shown = ceiling.values[i]!;
    return outside(valueAt(ceilingM, places, i), shown - under, shown + over);
  });
  const stops = summed(stopDepth, (i) => {
    const shown = stopDepth.values[i]!;
    return outside(valueAt(ceilingM, places, i), shown <= lastStopM ? 0 : shown - stopStepM, shown);
  });
  const all = [minutes, metres, stops];
  const total = (pick: (sum: Sum) => number) => all.reduce((sum, one) => sum + pick(one), 0);
  const count = Math.max(
    1,
    total((sum) => sum.count),
  );
  const outliers = total((sum) => sum.outliers);
  const squares = total((sum) => sum.squares);
  const root = (sum: Sum) =>
    sum.count > 0 ? Math.sqrt(sum.squares / Math.max(1, sum.count - sum.outliers)) : undefined;
  return {
    noStopMin: root(minutes),
    ceilingM: root(metres),
    stopDepthM: root(stops),
    loss: (squares + outliers * FARTHEST ** 2) / count,
    core: squares / Math.max(1, count - outliers),
    outliers,
    lateS: places.lateS,
  };
}

/** A value between two samples; where it leaps from one to the other, as a gas switch makes it, that of the nearer. */
function valueAt(values: Float64Array, { sample, part }: Places, i: number): number {
  const from = values[sample[i]!]!;
  const to = values[sample[i]! + 1]!;
  return from + (to - from) * part[i]!;
}

/** How far a value is outside a range. */
function outside(value: number, from: number, to: number): number {
  return value < from ? from - value : value > to ? value - to : 0;
}

/**
 * Displays round down, up or to the nearest, and a record does not say which: the way that fits best counts. `under` and
 * `over` are how far the true value may lie under and over the one shown.
 */
function rounded(shown: Shown, off: (i: number, under: number, over: number) => number): Sum {
  const { step } = shown;
  if (step === 0) return summed(shown, (i) => off(i, 0, 0));
  const ways = [
    [0, step],
    [step / 2, step / 2],
    [step, 0],
  ] as const;
  const sums = ways.map(([under, over]) => summed(shown, (i) => off(i, under, over)));
  const cost = ({ squares, outliers }: Sum) => squares + outliers * FARTHEST ** 2;
  return sums.reduce((best, sum) => (cost(sum) < cost(best) ? sum : best));
}

function summed({ values }: Shown, off: (i: number) => number): Sum {
  const sum = { squares: 0, count: 0, outliers: 0 };
  for (let i = 0; i < values.length; i += 1) {
    if (!Number.isFinite(values[i]!)) continue;
    const distance = off(i);
    sum.count += 1;
    if (distance < FARTHEST) sum.squares += distance ** 2;
    else sum.outliers += 1;
  }
  return sum;
}

import type { Dimension } from '../expression/dimension';

/** A curve a learner has drawn: values at run times, straight between them. */
export type Sketch = readonly SketchPoint[];

export interface SketchPoint {
  readonly timeS: number;
  readonly value: number;
}

/** The axes a curve is drawn on, and the true curve, sampled. */
export interface DrawAsked {
  readonly fromS: number;
  readonly toS: number;
  readonly dimension: Dimension;
  readonly upTo: number;
  readonly within: number;
  /** What is drawn, as a noun: "the no-stop time". */
  readonly noun: string;
  readonly format: string | undefined;
  /** Where the clock beside the axis begins, s, and since when that is. */
  readonly zeroS: number;
  readonly since: 'surfacing' | undefined;
  /** Moments with a box to type a value into, s; the first and the last are the ends. */
  readonly boxesS: readonly number[];
  /** The true curve, no higher than the axis. */
  readonly truth: Sketch;
}

/** The value of a sketch at a run time; level before its first and after its last point. */
export function sketchAt(sketch: Sketch, timeS: number): number {
  const after = sketch.findIndex((point) => point.timeS >= timeS);
  if (after < 0) return sketch.at(-1)?.value ?? 0;
  if (after === 0) return sketch[0]!.value;
  const [one, other] = [sketch[after - 1]!, sketch[after]!];
  const span = other.timeS - one.timeS;
  return span <= 0 ? other.value : one.value + ((other.value - one.value) * (timeS - one.timeS)) / span;
}

/** A sketch that is close for so much of the time is close. */
const CLOSE_SHARE = 0.8;

/** The share of the time a sketch is close to the true curve, 0–1. */
export function closeShare(sketch: Sketch, { truth, within }: Pick<DrawAsked, 'truth' | 'within'>): number {
  return truth.filter(({ timeS, value }) => Math.abs(sketchAt(sketch, timeS) - value) <= within).length / truth.length;
}

/** Whether a sketch counts as right: close for most of the way. */
export function isClose(sketch: Sketch, asked: Pick<DrawAsked, 'truth' | 'within'>): boolean {
  return closeShare(sketch, asked) >= CLOSE_SHARE;
}

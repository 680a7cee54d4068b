import type { DrawAsked, Sketch, SketchPoint } from './sketch';

/*
 * A curve as it is drawn: strokes of a hand and values typed at moments, whichever comes last. Times in s, values in the
 * unit of expressions.
 */

/** A sketch has to reach to within this share of either end of the axis. */
const EDGE_SHARE = 0.05;

/** Whether a sketch reaches from end to end. */
export function isWhole(sketch: Sketch, { fromS, toS }: Pick<DrawAsked, 'fromS' | 'toS'>): boolean {
  const slack = (toS - fromS) * EDGE_SHARE;
  const [first, last] = [sketch[0], sketch.at(-1)];
  return first !== undefined && last !== undefined && first.timeS <= fromS + slack && last.timeS >= toS - slack;
}

/** A stroke of the hand from one point to another: what was drawn there before is gone. */
export function withStroke(sketch: Sketch, from: SketchPoint, to: SketchPoint): Sketch {
  const [low, high] = from.timeS <= to.timeS ? [from, to] : [to, from];
  const outside = sketch.filter(({ timeS }) => timeS < low.timeS || timeS > high.timeS);
  const stroke = low.timeS === high.timeS ? [to] : [low, high];
  return inOrder([...outside, ...stroke]);
}

/** A value typed into the box of a moment, joined straight to the boxes beside it that have one. */
export function withTyped(sketch: Sketch, boxesS: readonly number[], box: number, value: number): Sketch {
  const timeS = boxesS[box]!;
  const beside = [boxesS[box - 1], boxesS[box + 1]].filter(
    (one) => one !== undefined && sketch.some((p) => p.timeS === one),
  );
  const low = Math.min(timeS, ...(beside as number[]));
  const high = Math.max(timeS, ...(beside as number[]));
  const kept = sketch.filter((point) => point.timeS !== timeS && (point.timeS <= low || point.timeS >= high));
  return inOrder([...kept, { timeS, value }]);
}

/** A box left empty: its value is taken out. */
export function withoutTyped(sketch: Sketch, timeS: number): Sketch {
  return sketch.filter((point) => point.timeS !== timeS);
}

/** The value at a moment, where something has been drawn; between two points, straight. */
export function drawnAt(sketch: Sketch, timeS: number): number | undefined {
  const after = sketch.findIndex((point) => point.timeS >= timeS);
  if (after < 0) return undefined;
  const next = sketch[after]!;
  if (next.timeS === timeS) return next.value;
  const before = sketch[after - 1];
  if (!before) return undefined;
  return before.value + ((next.value - before.value) * (timeS - before.timeS)) / (next.timeS - before.timeS);
}

function inOrder(points: SketchPoint[]): Sketch {
  return points.sort((one, other) => one.timeS - other.timeS);
}

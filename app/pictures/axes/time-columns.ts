import { sampleAt, type Timeline } from '@/lib/dive/timeline';
import type { TimeScale } from './time-scale';
import { SAME_INSTANT_S } from '@/lib/dive/sample-instants';

/**
 * The sample each pixel column of a picture stands for, from its left edge to its right, `width` + 1 of them: the last
 * one before the column's time, but where a leg begins inside the column, the one that begins it, so that no corner of
 * a dive is lost.
 */
export function timeColumns(timeline: Timeline, x: TimeScale, width: number): Int32Array {
  const { timeS, leg, length } = timeline;
  const columns = new Int32Array(Math.max(1, Math.round(width)) + 1);
  let sample = sampleAt(timeline, x.startS);
  for (let column = 0; column < columns.length; column += 1) {
    const untilS = x.invert(column) + SAME_INSTANT_S;
    let corner = -1;
    while (sample + 1 < length && timeS[sample + 1]! <= untilS) {
      sample += 1;
      if (corner < 0 && leg[sample] !== leg[sample - 1]) corner = sample;
    }
    columns[column] = corner < 0 ? sample : corner;
  }
  return columns;
}

/** How far a drawn line may run beside the figures it stands for, pixels: less than anyone can see. */
const ASTRAY = 0.15;

/**
 * A path through one figure of every column. A point is left out where the line between its neighbours passes it
 * by less than can be seen, so that a smooth curve takes a few dozen points: a browser's time to draw a path grows with them.
 */
export function columnPath(columns: Int32Array, x: (sample: number) => number, y: (column: number) => number): string {
  let path = '';
  let fromX = 0;
  let fromY = 0;
  let lastX = 0;
  let lastY = 0;
  // The slopes a line from the last point kept may have and still pass by all points since.
  let least = -Infinity;
  let most = Infinity;
  for (let column = 0; column < columns.length; column += 1) {
    const sample = columns[column]!;
    if (column > 0 && column < columns.length - 1 && sample === columns[column - 1]) continue;
    const nextX = x(sample);
    const nextY = y(column);
    const run = nextX - fromX;
    const slope = (nextY - fromY) / run;
    if (path === '') {
      path = `M${tenth(nextX)},${tenth(nextY)}`;
      fromX = nextX;
      fromY = nextY;
    } else if (run > 0 && slope >= least && slope <= most) {
      least = Math.max(least, (nextY - ASTRAY - fromY) / run);
      most = Math.min(most, (nextY + ASTRAY - fromY) / run);
    } else {
      path += `L${tenth(lastX)},${tenth(lastY)}`;
      fromX = lastX;
      fromY = lastY;
      const step = nextX - fromX;
      least = step > 0 ? (nextY - ASTRAY - fromY) / step : -Infinity;
      most = step > 0 ? (nextY + ASTRAY - fromY) / step : Infinity;
    }
    lastX = nextX;
    lastY = nextY;
  }
  return `${path}L${tenth(lastX)},${tenth(lastY)}`;
}

/** A length on screen to a tenth of a pixel: finer would only make paths longer. */
export function tenth(length: number): number {
  return Math.round(length * 10) / 10;
}

/** Neighbouring columns with the same value, as stretches from `from` to before `to`; columns valued 0 belong to none. */
export function columnRuns(
  values: ArrayLike<number>,
): { readonly value: number; readonly from: number; readonly to: number }[] {
  const runs: { value: number; from: number; to: number }[] = [];
  let from = 0;
  for (let column = 1; column <= values.length; column += 1) {
    if (column < values.length && values[column] === values[from]) continue;
    if (values[from] !== 0) runs.push({ value: values[from]!, from, to: column });
    from = column;
  }
  return runs;
}

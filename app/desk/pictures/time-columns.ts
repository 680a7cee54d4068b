import { sampleAt, type Timeline } from '@/lib/dive/timeline';
import type { TimeScale } from './time-scale';

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
    const untilS = x.invert(column) + 1e-6;
    let corner = -1;
    while (sample + 1 < length && timeS[sample + 1]! <= untilS) {
      sample += 1;
      if (corner < 0 && leg[sample] !== leg[sample - 1]) corner = sample;
    }
    columns[column] = corner < 0 ? sample : corner;
  }
  return columns;
}

/** A path through one figure of every column. Where the figure is not finite the path is broken. */
export function columnPath(columns: Int32Array, x: (sample: number) => number, y: (column: number) => number): string {
  let path = '';
  let pen = 'M';
  for (let column = 0; column < columns.length; column += 1) {
    const sample = columns[column]!;
    if (column > 0 && column < columns.length - 1 && sample === columns[column - 1]) continue;
    const top = y(column);
    if (Number.isFinite(top)) {
      path += `${pen}${tenth(x(sample))},${tenth(top)}`;
      pen = 'L';
    } else {
      pen = 'M';
    }
  }
  return path;
}

/** A length on screen to a tenth of a pixel: finer would only make paths longer. */
export function tenth(length: number): number {
  return Math.round(length * 10) / 10;
}

/** Neighbouring columns with the same value, as stretches from `from` to before `to`; columns valued 0 belong to none. */
export function columnRuns(values: ArrayLike<number>): { readonly value: number; readonly from: number; readonly to: number }[] {
  const runs: { value: number; from: number; to: number }[] = [];
  let from = 0;
  for (let column = 1; column <= values.length; column += 1) {
    if (column < values.length && values[column] === values[from]) continue;
    if (values[from] !== 0) runs.push({ value: values[from]!, from, to: column });
    from = column;
  }
  return runs;
}

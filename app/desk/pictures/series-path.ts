import { line, curveLinear } from 'd3';

/** Indices of at most about `most` samples, first and last among them, evenly chosen. */
export function thinned(length: number, most: number): number[] {
  const step = Math.max(1, Math.floor(length / Math.max(1, most)));
  const chosen: number[] = [];
  for (let i = 0; i < length - 1; i += step) chosen.push(i);
  if (length > 0) chosen.push(length - 1);
  return chosen;
}

/** An SVG path through some samples; it is broken where `y` is not a finite number. */
export function seriesPath(samples: readonly number[], x: (sample: number) => number, y: (sample: number) => number): string {
  return (
    line<number>()
      .defined((sample) => Number.isFinite(y(sample)))
      .x(x)
      .y(y)
      .curve(curveLinear)
      .digits(1)(samples) ?? ''
  );
}

import { line, curveLinear } from 'd3';

/** Indices of at most about `most` samples, first and last among them, evenly chosen. */
export function thinned(length: number, most: number): number[] {
  const step = Math.max(1, Math.floor(length / Math.max(1, most)));
  const chosen: number[] = [];
  for (let i = 0; i < length - 1; i += step) chosen.push(i);
  if (length > 0) chosen.push(length - 1);
  return chosen;
}

/** One for all paths: a frame of a drag draws several. */
const path = line<number>().curve(curveLinear).digits(1);

/** An SVG path through some samples. */
export function seriesPath(
  samples: readonly number[],
  x: (sample: number) => number,
  y: (sample: number) => number,
): string {
  return path.x(x).y(y)(samples) ?? '';
}

/** The samples at which something holds, each unbroken run of them by itself. */
export function runsOf(samples: readonly number[], holds: (sample: number) => boolean): number[][] {
  const runs: number[][] = [];
  let held = false;
  for (const sample of samples) {
    const holding = holds(sample);
    if (holding && held) runs.at(-1)!.push(sample);
    else if (holding) runs.push([sample]);
    held = holding;
  }
  return runs;
}

import type { ScaleLinear } from 'd3';
import { legSamples } from '@/lib/ascent/leg-samples';
import type { Timeline } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { tenth } from '../axes/time-columns';

const PARTS_OF_A_LEG = 24;

/**
 * The samples that draw the way of a compartment over pressure: at one depth it goes straight up or down, so the ends of
 * the leg are enough; on the way up or down it bends.
 */
export function trailSamples(timeline: Timeline): number[] {
  const samples: number[] = [];
  for (const { first, end, steady } of legSamples(timeline)) {
    const step = steady ? end - first : Math.max(1, Math.ceil((end - first) / PARTS_OF_A_LEG));
    for (let i = first; i < end; i += step) samples.push(i);
  }
  if (samples.at(-1) !== timeline.length - 1) samples.push(timeline.length - 1);
  return samples;
}

/** A compartment's way (number from 1) as a path, up to a sample: ambient pressure along x, its tension along y. */
export function trailPath(
  { ambientBar, nitrogenBar, heliumBar }: Timeline,
  samples: readonly number[],
  until: number,
  compartment: number,
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
): string {
  let path = '';
  const add = (sample: number) => {
    const at = sample * COMPARTMENTS + compartment - 1;
    path += `${path === '' ? 'M' : 'L'}${tenth(x(ambientBar[sample]!))},${tenth(y(nitrogenBar[at]! + heliumBar[at]!))}`;
  };
  for (const sample of samples) {
    if (sample > until) break;
    add(sample);
  }
  add(until);
  return path;
}

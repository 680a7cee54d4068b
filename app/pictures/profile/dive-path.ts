import type { Timeline } from '@/lib/dive/timeline';
import { runsOf, seriesPath } from '../axes/series-path';

/** Where a moment is along a picture, and a depth down it. */
interface Places {
  readonly x: (timeS: number) => number;
  readonly y: (depthM: number) => number;
}

/** A dive's depth over time, as an SVG path from the surface. */
export function divePath({ legs }: Pick<Timeline, 'legs'>, { x, y }: Places): string {
  return `M${x(0).toFixed(1)},0${legs.map((leg) => `L${x(leg.endS).toFixed(1)},${y(leg.toM).toFixed(1)}`).join('')}`;
}

/** The stretches in which there is a ceiling, each as an SVG path along its lower edge and where along the picture it begins. */
export function ceilingEdges(
  { timeS }: Timeline,
  ceilingM: Float64Array,
  samples: readonly number[],
  { x, y }: Places,
) {
  const at = (i: number) => x(timeS[i]!);
  return runsOf(samples, (i) => ceilingM[i]! > 0).map((run) => ({
    startX: at(run[0]!),
    path: seriesPath(run, at, (i) => y(ceilingM[i]!)),
  }));
}

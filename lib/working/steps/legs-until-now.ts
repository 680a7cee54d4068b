import type { Timeline } from '../../dive/timeline';
import type { WorkingLeg } from './leg-steps';

/** A leg of the dive as far as it has gone. */
export interface LegUntilNow {
  readonly leg: WorkingLeg;
  /** At the surface between dives. */
  readonly interval: boolean;
  readonly startSample: number;
  readonly endSample: number;
}

/** Every leg up to a sample; the last one ends there. */
export function legsUntilNow(timeline: Timeline, sample: number): LegUntilNow[] {
  const current = timeline.leg[sample]!;
  return timeline.legs.slice(0, current + 1).map(({ startS, endS, fromM, toM, gas, interval }, index) => {
    const now = index === current;
    const way = toM === fromM ? (interval ? 'at the surface' : 'staying') : toM > fromM ? 'going down' : 'coming up';
    const leg: WorkingLeg = {
      name: String(index + 1),
      title: `leg ${index + 1}, ${way}`,
      fromM,
      toM: now ? timeline.depthM[sample]! : toM,
      minutes: ((now ? timeline.timeS[sample]! : endS) - startS) / 60,
      gas: timeline.gases[gas]!,
      from: 'dive',
    };
    return {
      leg,
      interval,
      startSample: firstSampleOf(timeline, index),
      endSample: now ? sample : firstSampleOf(timeline, index + 1),
    };
  });
}

function firstSampleOf({ leg, length }: Timeline, index: number): number {
  let low = 0;
  let high = length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (leg[middle]! < index) low = middle + 1;
    else high = middle;
  }
  return low;
}

import { legsOf } from '@/lib/dive/legs';
import type { DiveOfRecords } from '@/lib/files/records/dive-from-record';
import type { Trace } from '@/lib/files/records/thin-samples';

/** The dive's own line from a moment of its clock on, for so long. */
export function lineOf(dive: DiveOfRecords['dive'], offsetS: number, endS: number): Trace {
  const { legs } = legsOf(dive);
  const points: [number, number][] = [];
  for (const { startS, endS: legEndS, fromM, toM } of legs) {
    if (startS - offsetS < 0 || startS - offsetS > endS) continue;
    if (points.length === 0) points.push([startS - offsetS, fromM]);
    points.push([legEndS - offsetS, toM]);
  }
  const inside = points.filter(([timeS]) => timeS <= endS + 1e-6);
  return {
    timeS: Float64Array.from(inside, ([timeS]) => timeS),
    valueOf: Float64Array.from(inside, ([, depthM]) => depthM),
  };
}

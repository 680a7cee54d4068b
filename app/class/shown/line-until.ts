import type { DepthLine } from '@/lib/class/ask';
import type { Scene } from '../../pictures/scene';

/** Legs of a dive that travel as a line. */
const MOST_LEGS = 140;

/** The depth of a dive up to a moment: what comes after it would tell too much. */
export function lineUntil({ timeline: { legs } }: Scene, untilS: number): DepthLine | undefined {
  const points: [number, number][] = [];
  for (const { startS, endS, fromM, toM } of legs) {
    if (startS >= untilS) break;
    const share = endS <= untilS || endS === startS ? 1 : (untilS - startS) / (endS - startS);
    points.push([startS, tenth(fromM)], [Math.min(endS, untilS), tenth(fromM + (toM - fromM) * share)]);
  }
  return points.length >= 2 && points.length <= 2 * MOST_LEGS ? { points } : undefined;
}

const tenth = (depthM: number) => Math.round(depthM * 10) / 10;

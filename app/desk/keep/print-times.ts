import { create } from 'zustand';
import { sampleAt, type Timeline } from '@/lib/dive/timeline';

/** When the readings of a printed sheet are taken: where the dive turns, or at even times. */
export type PrintTimes = 'points' | 'even';

interface PrintChoice {
  times: PrintTimes;
  /** Whether the dive is drawn: the ceiling in it would tell a class what it is to find. */
  drawn: boolean;
  /** Whether the other pictures on the desk follow, on sheets of their own. */
  others: boolean;
}

export const usePrintChoice = create<PrintChoice>()(() => ({ times: 'points', drawn: true, others: false }));

/** Rows that leave room on the sheet for the dive and its script. */
export const MOST_ROWS = 20;
const EVEN_MIN = [1, 2, 5, 10, 15, 20, 30, 60, 120, 240, 480];

/** The samples to print, in order; the one at the cursor is always among them. */
export function printedSamples(timeline: Timeline, times: PrintTimes, cursorS: number): number[] {
  const endS = timeline.timeS.at(-1)!;
  const taken = times === 'points' ? pointTimes(timeline) : evenTimes(endS);
  const samples = [...taken, cursorS].map((timeS) => sampleAt(timeline, timeS));
  return [...new Set(samples)].sort((one, other) => one - other);
}

function pointTimes({ legs }: Timeline): number[] {
  const points = [0, ...legs.map((leg) => leg.endS)];
  const every = Math.ceil(points.length / MOST_ROWS);
  return points.filter((_, index) => index % every === 0 || index === points.length - 1);
}

function evenTimes(endS: number): number[] {
  const stepS = (EVEN_MIN.find((minutes) => endS / (minutes * 60) <= MOST_ROWS - 1) ?? 960) * 60;
  return [...Array.from({ length: Math.floor(endS / stepS) + 1 }, (_, index) => index * stepS), endS];
}

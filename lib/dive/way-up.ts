import type { Timeline } from './timeline';

/** A stretch of a day, s since it began. */
export interface WayUp {
  readonly startS: number;
  readonly endS: number;
}

/**
 * When one dive of a day (from 0) leaves its deepest point for the last time, and when it ends, s; undefined for one that never
 * leaves the surface.
 */
export function wayUpOf({ legs }: Pick<Timeline, 'legs'>, diveNumber: number): WayUp | undefined {
  const own = legs.filter((leg) => leg.diveNumber === diveNumber && !leg.interval);
  const deepestM = Math.max(...own.map(({ toM }) => toM));
  const last = own.findLast(({ toM }) => toM === deepestM);
  return last && deepestM > 0 ? { startS: last.endS, endS: own.at(-1)!.endS } : undefined;
}

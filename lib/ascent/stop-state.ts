import type { Schedule } from './plan/schedule';

/**
 * How a diver stands towards stops. Two questions are asked at every instant: is there a ceiling now, and does the plan's
 * way up from here need a stop? `free`: neither; `clearing`: a ceiling that is gone before a direct ascent reaches it;
 * `filling`: none yet, but the way up takes up gas enough to need a stop; `owed`: both.
 */
export type StopState = 'free' | 'clearing' | 'filling' | 'owed';

/** The state that follows from the two questions. */
export function stopStateOf(ceilingM: number, stopOnTheWay: boolean): StopState {
  if (ceilingM > 0) return stopOnTheWay ? 'owed' : 'clearing';
  return stopOnTheWay ? 'filling' : 'free';
}

/** Whether a way up is more than a direct ascent; one without end is. */
export function needsStop({ stops, timeToSurfaceMin }: Pick<Schedule, 'stops' | 'timeToSurfaceMin'>): boolean {
  return stops.length > 0 || timeToSurfaceMin === Infinity;
}

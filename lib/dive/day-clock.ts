import type { Leg } from './legs';
import type { Timeline } from './timeline';
import { stepsTo } from '../quantity/rounding';
import { SAME_INSTANT_S } from './sample-instants';
import { printClock, printHours } from '../quantity/duration';

/** Where in a day of dives a time lies. */
export interface DayPlace {
  /** From 1; while at the surface between dives, the one before. */
  readonly dive: number;
  readonly between: boolean;
  /** Since the dive, or the wait after it, began; s. */
  readonly sinceS: number;
}

/** Where in the day a time lies; undefined where there is but one dive, which counts from the start of the script. */
export function dayPlaceAt({ legs }: Pick<Timeline, 'legs'>, timeS: number): DayPlace | undefined {
  if ((legs.at(-1)?.diveNumber ?? 0) === 0) return undefined;
  const at = legs.findLast(({ startS }) => startS <= timeS) ?? legs[0]!;
  const alike = (leg: Leg) => leg.diveNumber === at.diveNumber && leg.interval === at.interval;
  return { dive: at.diveNumber + 1, between: at.interval, sinceS: timeS - legs.find(alike)!.startS };
}

/**
 * From when on readings show what happens at an instant, s: they go by whole seconds, and by the ends of legs. A clock
 * that told the second before would tell of it when nothing shows it yet.
 */
export function shownFromS({ legs }: Pick<Timeline, 'legs'>, timeS: number): number {
  const leg = legs.find(({ endS }) => endS >= timeS - SAME_INSTANT_S);
  return Math.min(stepsTo(timeS), leg?.endS ?? timeS);
}

/** A time of the day as a person reads it, each dive by its own clock: `17:40`, `Dive 2, 0:34`, `After dive 1, 48 h`. */
export function printDayClock(timeline: Pick<Timeline, 'legs'>, timeS: number): string {
  const place = dayPlaceAt(timeline, timeS);
  if (!place) return printClock(timeS);
  if (place.between) return `After dive ${place.dive}, ${printHours(place.sinceS, 'down')}`;
  return `Dive ${place.dive}, ${printClock(place.sinceS)}`;
}

/** A stretch of one dive or of the wait after it, by its clock: `2:00 to 12:00`, `Dive 2, 0:34 to 2:00`. */
export function printDaySpan(timeline: Pick<Timeline, 'legs'>, startS: number, endS: number): string {
  const place = dayPlaceAt(timeline, startS);
  const untilS = (place?.sinceS ?? startS) + endS - startS;
  return `${printDayClock(timeline, startS)} to ${place?.between ? printHours(untilS, 'down') : printClock(untilS)}`;
}

/** A time of the day as a sentence begins with it: `At 17:40`, `Dive 2, at 0:34`, `After dive 1, at 48 h`. */
export function sayAtDayClock(timeline: Pick<Timeline, 'legs'>, timeS: number): string {
  const clock = printDayClock(timeline, timeS);
  return dayPlaceAt(timeline, timeS) ? clock.replace(', ', ', at ') : `At ${clock}`;
}

/** A time of the day within a sentence: `at 17:40`, `on dive 2, at 0:34`, `after dive 1, at 48 h`. */
export function atDayClock(timeline: Pick<Timeline, 'legs'>, timeS: number): string {
  return sayAtDayClock(timeline, timeS).replace(/^Dive/, 'on dive').replace(/^A/, 'a');
}

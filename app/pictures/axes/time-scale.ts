import type { Timeline } from '@/lib/dive/timeline';
import { straightScale } from '../../parts/straight-scale';
import { SAME_INSTANT_S } from '@/lib/dive/sample-instants';

/** An interval takes at most this share of the time spent diving, so that hours at the surface don't crowd out the dives. */
const INTERVAL_SHARE = 0.1;

export interface TimeScale {
  /** Seconds to picture units. */
  (timeS: number): number;
  invert(x: number): number;
  /** Intervals drawn shorter than they are. */
  readonly breaks: readonly { readonly startS: number; readonly endS: number }[];
  readonly startS: number;
  readonly endS: number;
  /** Where the timeline ends: a view may show more, for a dive that is still going on. */
  readonly lastS: number;
  /** When each dive of the day begins and ends. */
  readonly dives: readonly { readonly startS: number; readonly endS: number }[];
}

/**
 * Time along a picture `width` wide, from `startS` to `endS`. Dives keep one measure; surface intervals longer than a
 * share of it are drawn compressed, each marked as a break.
 */
export function timeScale(
  timeline: Pick<Timeline, 'legs'>,
  width: number,
  view?: { startS: number; endS: number },
): TimeScale {
  const endS = timeline.legs.at(-1)!.endS || 60;
  const divingS = timeline.legs.reduce((sum, leg) => sum + (leg.interval ? 0 : leg.endS - leg.startS), 0) || 60;
  const longest = divingS * INTERVAL_SHARE;
  const times = [0];
  const places = [0];
  const breaks: { startS: number; endS: number }[] = [];
  for (const leg of timeline.legs) {
    const lengthS = leg.endS - leg.startS;
    if (leg.interval && lengthS > longest) {
      breaks.push({ startS: leg.startS, endS: leg.endS });
      times.push(leg.startS, leg.endS);
      places.push(places.at(-1)! + leg.startS - times.at(-3)!, 0);
      places[places.length - 1] = places.at(-2)! + longest;
    }
  }
  times.push(endS);
  places.push(places.at(-1)! + endS - times.at(-2)!);
  const bend = straightScale(times, places);
  const shown = view ?? { startS: 0, endS };
  const line = straightScale([bend(shown.startS), bend(shown.endS)], [0, width]);
  return Object.assign((timeS: number) => line(bend(timeS)), {
    invert: (x: number) => bend.invert(line.invert(x)),
    breaks,
    startS: shown.startS,
    endS: shown.endS,
    lastS: endS,
    dives: divesOf(timeline),
  });
}

/** Time along a picture of one dive that was recorded until `endS`. */
export function recordScale(endS: number, width: number): TimeScale {
  const line = straightScale([0, endS], [0, width]);
  return Object.assign((timeS: number) => line(timeS), {
    invert: (x: number) => line.invert(x),
    breaks: [],
    startS: 0,
    endS,
    lastS: endS,
    dives: [{ startS: 0, endS }],
  });
}

function divesOf({ legs }: Pick<Timeline, 'legs'>): { startS: number; endS: number }[] {
  const dives: { startS: number; endS: number }[] = [];
  for (const { diveNumber, interval, startS, endS } of legs) {
    if (interval) continue;
    const dive = (dives[diveNumber] ??= { startS, endS });
    dive.endS = endS;
  }
  return dives.filter(Boolean);
}

/** A moment to mark along the axis, and what stands there. */
export interface TimeTick {
  readonly timeS: number;
  readonly text: string;
}

/** What a mark along the axis has room in, px. */
const ROOM = 80;

/** Whole minutes to mark along the axis, about one to every `ROOM` of the picture. Each dive of a day counts its own. */
export function timeTicks(scale: TimeScale, width: number): TimeTick[] {
  const { dives, startS, endS, lastS } = scale;
  const first = dives[0]?.startS ?? startS;
  const perMinute = scale(first + 60) - scale(first);
  const step = [1, 2, 5, 10, 15, 20, 30, 60, 120, 240].find((minutes) => minutes * perMinute >= ROOM) ?? 480;
  const ticks: TimeTick[] = [];
  dives.forEach((dive, index) => {
    const goesOn = index === dives.length - 1 && endS > lastS;
    for (let minutes = 0; dive.startS + minutes * 60 <= (goesOn ? endS : dive.endS); minutes += step) {
      const timeS = dive.startS + minutes * 60;
      if (timeS < startS - SAME_INSTANT_S || timeS > endS + SAME_INSTANT_S) continue;
      const last = ticks.at(-1);
      if (last && width > 0 && scale(timeS) - scale(last.timeS) <= ROOM * 0.5) {
        // Where a dive begins is worth more than where minutes end.
        if (minutes > 0) continue;
        ticks.pop();
      }
      ticks.push({ timeS, text: minutes === 0 && dives.length > 1 ? `dive ${index + 1}` : `${minutes} min` });
    }
  });
  return ticks;
}

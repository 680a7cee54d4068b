import type { Timeline } from '@/lib/dive/timeline';
import { straightScale } from '../../parts/straight-scale';

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
}

/**
 * Time along a picture `width` wide, from `startS` to `endS`. Dives keep one measure; surface intervals longer than a
 * share of it are drawn compressed, each marked as a break.
 */
export function timeScale(timeline: Timeline, width: number, view?: { startS: number; endS: number }): TimeScale {
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
  });
}

/** Whole minutes to mark along the axis, as seconds since the start: about one to every `room` of the picture. */
export function timeTicks(scale: TimeScale, width: number, room = 80): number[] {
  const compressed = (timeS: number) => scale.breaks.some((gap) => timeS > gap.startS && timeS < gap.endS);
  const perMinute = scale(scale.startS + 60) - scale(scale.startS);
  const step = [1, 2, 5, 10, 15, 20, 30, 60, 120, 240].find((minutes) => minutes * perMinute >= room) ?? 480;
  const ticks: number[] = [];
  for (let timeS = Math.ceil(scale.startS / 60 / step) * step * 60; timeS <= scale.endS; timeS += step * 60) {
    if (!compressed(timeS)) ticks.push(timeS);
  }
  return ticks.filter(
    (timeS, index) => index === 0 || scale(timeS) - scale(ticks[index - 1]!) > room * 0.5 || width === 0,
  );
}

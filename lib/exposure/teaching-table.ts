import type { Stop } from '../ascent/plan/schedule';
import { USUAL_DESCENT_M_MIN } from '../dive/bounds';
import type { Dive, Settings } from '../dive/dive';
import { planFrom } from './ascent-plan';

/** One bottom time of a teaching table. */
export interface TeachingEntry {
  /** From leaving the surface to leaving the bottom, min. */
  readonly bottomMin: number;
  /** Deepest first; none when a direct ascent is tolerated. */
  readonly stops: readonly Stop[];
  /** The ascent with its stops, min; Infinity where it would never end. */
  readonly timeToSurfaceMin: number;
}

export interface TeachingRow {
  readonly depthM: number;
  /** The longest whole minutes of bottom time without a stop; null where it is over the longest asked for. */
  readonly noStopMin: number | null;
  /** One for each bottom time long enough to reach the depth. */
  readonly entries: readonly TeachingEntry[];
}

export interface TeachingTableWish {
  readonly depthsM: readonly number[];
  readonly bottomMins: readonly number[];
  /** Rate of the descent, m/min. */
  readonly descentMMin?: number;
  /** No-stop times are looked for up to this, min. */
  readonly longestMin?: number;
}

const USUAL_LONGEST_MIN = 300;

/**
 * A table worked out by the engine for a class, under the settings' own limits, gas and plan: for each depth the no-stop
 * time, and for each bottom time its stops. Bottom time counts from leaving the surface, as tables count it. For a first
 * dive only: it has no groups and no second dive, and is nobody's published table.
 */
export function teachingTable(settings: Settings, wish: TeachingTableWish): TeachingRow[] {
  const { descentMMin = USUAL_DESCENT_M_MIN, longestMin = USUAL_LONGEST_MIN } = wish;
  return wish.depthsM.map((depthM) => {
    const entry = (bottomMin: number): TeachingEntry => {
      const { stops, timeToSurfaceMin } = planFrom(squareDive(settings, depthM, bottomMin, descentMMin)).schedule;
      return { bottomMin, stops, timeToSurfaceMin };
    };
    const reachedMin = depthM / descentMMin;
    const noStop = longestWithout((minutes) => entry(minutes).stops.length > 0, Math.ceil(reachedMin), longestMin);
    return {
      depthM,
      noStopMin: noStop,
      entries: wish.bottomMins.filter((minutes) => minutes >= reachedMin).map(entry),
    };
  });
}

/** A descent and a stay, which together take the bottom time. */
export function squareDive(
  settings: Settings,
  depthM: number,
  bottomMin: number,
  descentMMin: number = USUAL_DESCENT_M_MIN,
): Dive {
  const downS = (depthM / descentMMin) * 60;
  const stayS = bottomMin * 60 - downS;
  return {
    settings,
    steps: [
      { kind: 'descend', toM: depthM, durationS: downS },
      ...(stayS > 0 ? [{ kind: 'stay' as const, durationS: stayS }] : []),
    ],
    lines: [],
  };
}

/** The last whole number from `from` on for which something is not yet so; 0 when it is so at once, null when never up to `to`. */
function longestWithout(isSo: (minutes: number) => boolean, from: number, to: number): number | null {
  if (isSo(from)) return 0;
  if (!isSo(to)) return null;
  let [before, after] = [from, to];
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (isSo(middle)) after = middle;
    else before = middle;
  }
  return before;
}

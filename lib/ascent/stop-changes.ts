import type { Timeline } from '../dive/timeline';
import type { Figures } from './figures';
import { standingsAlong, type Standing } from './standings';

/** From a moment on, how the diver stands. */
export interface StopChange extends Standing {
  readonly timeS: number;
}

/**
 * Pieces no longer than these are looked at, s, cut at whole multiples on the dive's clock, however finely the dive is
 * sampled: while the depth changes, and at one depth, where tissues turn slowly.
 */
const LONGEST_PIECE_S = { changing: 8, steady: 80 };
/** A piece in which it can't be told that nothing comes and goes is halved down to this, s. */
const SHORTEST_PIECE_S = { changing: 0.25, steady: 1.25 };
/** A change is then found this closely, s. */
const FOUND_S = 1e-7;

const known = new WeakMap<Figures, readonly StopChange[]>();

/**
 * Every change of state, and of the first stop's depth, at its instant; the first is how the diver stands at the start.
 * It depends neither on the timeline's samples nor on how a climb is cut into steps. Worked out once for some figures.
 */
export function stopChanges(timeline: Timeline, figures: Figures): readonly StopChange[] {
  const before = known.get(figures);
  if (before) return before;
  const standings = standingsAlong(timeline, figures);
  const changeAt = (timeS: number): StopChange => ({ timeS, ...standings.at(timeS) });
  const changes = [changeAt(0)];
  let shortestS = 0;
  const between = (one: StopChange, other: StopChange): void => {
    const lengthS = other.timeS - one.timeS;
    if (same(one, other)) {
      if (lengthS <= shortestS || standings.staysBetween(one.timeS, other.timeS, one)) return;
    } else if (lengthS <= FOUND_S) {
      changes.push(other);
      return;
    }
    const middle = changeAt((one.timeS + other.timeS) / 2);
    between(one, middle);
    between(middle, other);
  };
  let last = changes[0]!;
  for (const { startS, endS, fromM, toM, interval } of timeline.legs) {
    const kind = fromM === toM ? 'steady' : 'changing';
    const everyS = LONGEST_PIECE_S[kind];
    shortestS = SHORTEST_PIECE_S[kind];
    // What changes in one instant, as gases do, has no piece of its own.
    const begins = changeAt(startS);
    if (!same(last, begins)) changes.push(begins);
    last = begins;
    for (let look = Math.floor(startS / everyS) + 1; last.timeS < endS; look += 1) {
      // Once free at the surface a diver stays so, breathing air there.
      const nextS = interval && last.state === 'free' ? endS : Math.min(endS, look * everyS);
      const next = changeAt(nextS);
      between(last, next);
      last = next;
    }
  }
  known.set(figures, changes);
  return changes;
}

function same(one: StopChange, other: StopChange): boolean {
  return one.state === other.state && one.stopM === other.stopM;
}

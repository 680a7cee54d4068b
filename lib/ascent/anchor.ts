import type { GradientFactors } from '../dive/dive';
import { COMPARTMENTS } from '../tissue/coefficients';
import type { GasPath } from './gas-path';

/**
 * How a diver stands towards the line from low to high. Bound from the instant the ceiling at `high` leaves the surface
 * until it is back there; the anchor, below the surface, bar, is the deepest ceiling at `low` since then, and 0 while free.
 */
export interface LineState {
  readonly bound: boolean;
  readonly anchorBar: number;
}

export const FREE: LineState = { bound: false, anchorBar: 0 };

/** A piece of a path on which the dive stays bound and no compartment's ceiling at `low` that sinks the anchor peaks within. */
type OnBoundPiece = (fromMin: number, toMin: number, anchorBar: number) => boolean;

/**
 * Carries the line along a path, exactly: it is let go and taken up again at the very instants at which the dive becomes
 * free and bound, and a peak of the ceiling within the path counts as one at its end. On a bound piece the anchor at a
 * moment is the deeper of the piece's own and the ceiling at `low` then. `onPiece` may say false to stop: then null.
 */
export function lineAlong(
  path: GasPath,
  { low, high }: GradientFactors,
  before: LineState,
  onPiece: OnBoundPiece = () => true,
): LineState | null {
  let couldBeOver = false;
  let overThroughout = false;
  for (let c = 0; c < COMPARTMENTS && !overThroughout; c += 1) {
    if (path.mostOverBar(c, high) <= 0) continue;
    couldBeOver = true;
    overThroughout = path.leastOverBar(c, high) > 0;
  }
  if (!couldBeOver) return FREE;
  const cuts = new Set([0, path.minutes]);
  // Only a ceiling that may come below the anchor there is already can sink it.
  const deeperThanBar = overThroughout && before.bound ? before.anchorBar : 0;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    if (!overThroughout && path.mostOverBar(c, high) > 0)
      for (const minutes of path.crossings(c, high)) cuts.add(minutes);
    if (low < high && path.mostToleratedBar(c, low) > deeperThanBar)
      for (const minutes of path.turns(c, low)) cuts.add(minutes);
  }
  const marks = [...cuts].sort((one, other) => one - other);
  let state = before;
  for (let i = 1; i < marks.length; i += 1) {
    const [from, to] = [marks[i - 1]!, marks[i]!];
    if (!overThroughout && !path.isOver((from + to) / 2, high)) {
      state = FREE;
      continue;
    }
    const anchorBar = Math.max(state.anchorBar, path.ceilingBar(from, low));
    if (!onPiece(from, to, anchorBar)) return null;
    state = { bound: true, anchorBar: Math.max(anchorBar, path.ceilingBar(to, low)) };
  }
  // What is so at the very end is read there, as it is at the start of what follows.
  if (!path.isOver(path.minutes, high)) return FREE;
  return state.bound ? state : { bound: true, anchorBar: path.ceilingBar(path.minutes, low) };
}

import { GasPath } from '../ascent/gas-path';
import { gasAt, type Timeline } from '../dive/timeline';
import { nitrogenFraction } from '../physics/gas';
import { COMPARTMENTS } from '../tissue/coefficients';

/** A stretch between two samples throughout which there is a ceiling: the surface would not be tolerated. */
export interface BoundSpan {
  readonly fromS: number;
  readonly toS: number;
  readonly leg: number;
}

/**
 * Where a dive has a ceiling, in order of time, exactly: what comes and goes between two samples is found as well, so
 * that samples at the changes of step are enough. `high`, the gradient factor at the surface, alone decides it.
 */
export function* boundSpans(timeline: Timeline, high: number): Generator<BoundSpan> {
  const { length, timeS, leg, ambientBar, lungOffsetBar, nitrogenBar, heliumBar } = timeline;
  const path = new GasPath(timeline.compartments, timeline.surfaceBar);
  const mayBeOver = mayBeOverIn(timeline, high);
  for (let i = 0; i < length; i += 1) {
    const next = Math.min(i + 1, length - 1);
    const minutes = (timeS[next]! - timeS[i]!) / 60;
    const [startBar, endBar] = [ambientBar[i]! - lungOffsetBar, ambientBar[next]! - lungOffsetBar];
    const gas = gasAt(timeline, i);
    const nitrogen = nitrogenFraction(gas);
    const mostBar = Math.max(startBar, endBar);
    if (!mayBeOver(i * COMPARTMENTS, mostBar * nitrogen, mostBar * gas.he, minutes)) continue;
    const along = {
      nitrogenStartBar: startBar * nitrogen,
      nitrogenEndBar: endBar * nitrogen,
      heliumStartBar: startBar * gas.he,
      heliumEndBar: endBar * gas.he,
    };
    path.begin(nitrogenBar, heliumBar, i * COMPARTMENTS, 1, along, minutes);
    if (minutes === 0) {
      if (path.isOver(0, high)) yield { fromS: timeS[i]!, toS: timeS[i]!, leg: leg[i]! };
      continue;
    }
    const cuts = new Set([0, minutes]);
    for (let c = 0; c < COMPARTMENTS; c += 1) for (const crossing of path.crossings(c, high)) cuts.add(crossing);
    const marks = [...cuts].sort((one, other) => one - other);
    const instant = (min: number) => (min === minutes ? timeS[next]! : timeS[i]! + min * 60);
    let begun: number | undefined;
    for (let m = 1; m <= marks.length; m += 1) {
      const from = marks[m - 1]!;
      const over = m < marks.length && path.isOver((from + marks[m]!) / 2, high);
      if (over) begun ??= from;
      else if (begun !== undefined) {
        yield { fromS: instant(begun), toS: instant(from), leg: leg[i]! };
        begun = undefined;
      }
    }
  }
}

/** Tells cheaply where no compartment can come over its limit at the surface, whatever mixture it holds. */
function mayBeOverIn({ compartments, nitrogenBar, heliumBar, hasHelium, surfaceBar }: Timeline, high: number) {
  const { nitrogenA, nitrogenB, nitrogenK, heliumA, heliumB, heliumK } = compartments;
  const limitBar = Float64Array.from({ length: COMPARTMENTS }, (_, c) => {
    const a = hasHelium ? Math.min(nitrogenA[c]!, heliumA[c]!) : nitrogenA[c]!;
    const b = hasHelium ? Math.max(nitrogenB[c]!, heliumB[c]!) : nitrogenB[c]!;
    return surfaceBar + high * (a + surfaceBar / b - surfaceBar);
  });
  const mostHeld = (tensionBar: number, breathedBar: number, k: number, minutes: number) =>
    tensionBar >= breathedBar ? tensionBar : breathedBar + (tensionBar - breathedBar) * Math.exp(-k * minutes);
  return (at: number, nitrogenMostBar: number, heliumMostBar: number, minutes: number): boolean => {
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const nitrogen = nitrogenBar[at + c]!;
      const helium = hasHelium ? heliumBar[at + c]! : 0;
      if (Math.max(nitrogen, nitrogenMostBar) + Math.max(helium, heliumMostBar) <= limitBar[c]!) continue;
      const most =
        mostHeld(nitrogen, nitrogenMostBar, nitrogenK[c]!, minutes) +
        (hasHelium ? mostHeld(helium, heliumMostBar, heliumK[c]!, minutes) : 0);
      if (most > limitBar[c]!) return true;
    }
    return false;
  };
}

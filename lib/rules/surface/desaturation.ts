import type { Timeline } from '../../dive/timeline';
import {
  heliumAfter,
  longestWait,
  nitrogenAfter,
  restingAt,
  surfaceNitrogenBar,
  type Resting,
  type Wait,
} from './surface-interval';
import { COMPARTMENTS } from '../../tissue/coefficients';

/**
 * How much more inert gas than at rest still counts as none, bar. An exponential never ends, so "desaturated" needs an
 * edge; this one is a hundredth of a bar, about what 10 cm of water weigh. Our own choice.
 */
export const DESATURATED_BAR = 0.01;

/** Time on air at the surface until no compartment holds more than it would at rest (to `DESATURATED_BAR`). */
export function desaturation(timeline: Timeline, sample: number): Wait {
  return desaturationOf(restingAt(timeline, sample));
}

/** The longest of some compartments' waits. */
export function desaturationOf(compartments: readonly Resting[]): Wait {
  return longestWait(
    compartments,
    (resting, minutes) =>
      nitrogenAfter(resting, minutes) + heliumAfter(resting, minutes) <= resting.settledBar + DESATURATED_BAR,
  );
}

/** One compartment between surfacing and now. */
export interface Washout {
  readonly compartment: number;
  /** Inert gas above what it would hold at rest, bar. */
  readonly excessThenBar: number;
  readonly excessNowBar: number;
  /** The part of the excess that has gone, 0–1; null where there was none. */
  readonly gone: number | null;
}

/** How far the sixteen compartments have washed out between two samples at the surface. */
export function surfaceWashout(timeline: Timeline, surfacedSample: number, sample: number): Washout[] {
  const settledBar = surfaceNitrogenBar(timeline);
  const excess = (at: number, c: number) =>
    timeline.nitrogenBar[at * COMPARTMENTS + c]! + timeline.heliumBar[at * COMPARTMENTS + c]! - settledBar;
  return Array.from({ length: COMPARTMENTS }, (_, c) => {
    const excessThenBar = excess(surfacedSample, c);
    const excessNowBar = excess(sample, c);
    return {
      compartment: c + 1,
      excessThenBar,
      excessNowBar,
      gone: excessThenBar > 0 ? 1 - excessNowBar / excessThenBar : null,
    };
  });
}

import { AIR, nitrogenFraction } from '../../physics/gas';
import { COMPARTMENTS } from '../../tissue/coefficients';
import type { Timeline } from '../../dive/timeline';

/** No wait longer than this is looked for, min: a week. */
export const LONGEST_WAIT_MIN = 7 * 24 * 60;
const SEARCH_END_MIN = 1e-6;

/** One compartment on air at the surface: its tensions from a sample on as functions of the minutes gone by. */
export interface Resting {
  readonly compartment: number;
  readonly nitrogenBar: number;
  readonly heliumBar: number;
  /** What it tends to: the nitrogen of air at the surface, bar. */
  readonly settledBar: number;
  readonly nitrogenK: number;
  readonly heliumK: number;
}

/** What is in the lungs at the surface on air, bar of nitrogen. */
export function surfaceNitrogenBar(timeline: Timeline): number {
  return (timeline.surfaceBar - timeline.lungOffsetBar) * nitrogenFraction(AIR);
}

/** The sixteen compartments at a sample, resting from then on at the surface on air. */
export function restingAt(timeline: Timeline, sample: number): Resting[] {
  const settledBar = surfaceNitrogenBar(timeline);
  return Array.from({ length: COMPARTMENTS }, (_, c) => ({
    compartment: c + 1,
    nitrogenBar: timeline.nitrogenBar[sample * COMPARTMENTS + c]!,
    heliumBar: timeline.heliumBar[sample * COMPARTMENTS + c]!,
    settledBar,
    nitrogenK: timeline.compartments.nitrogenK[c]!,
    heliumK: timeline.compartments.heliumK[c]!,
  }));
}

/** Nitrogen a compartment holds after minutes at the surface on air, bar (Haldane’s exponential). */
export function nitrogenAfter(resting: Resting, minutes: number): number {
  return resting.settledBar + (resting.nitrogenBar - resting.settledBar) * Math.exp(-resting.nitrogenK * minutes);
}

/** Helium a compartment holds after minutes at the surface on air, bar; air has none of it (Haldane’s exponential). */
export function heliumAfter(resting: Resting, minutes: number): number {
  return resting.heliumBar * Math.exp(-resting.heliumK * minutes);
}

/**
 * The first minute from which a condition holds that, once true, stays true; 0 if it does already, Infinity if it does
 * not within a week. Found by doubling, then halving, to a millionth of a minute.
 */
export function minutesUntil(holds: (minutes: number) => boolean): number {
  if (holds(0)) return 0;
  let before = 0;
  let after = 1;
  while (!holds(after)) {
    if (after >= LONGEST_WAIT_MIN) return Infinity;
    before = after;
    after = Math.min(after * 2, LONGEST_WAIT_MIN);
  }
  while (after - before > SEARCH_END_MIN) {
    const middle = (before + after) / 2;
    if (holds(middle)) after = middle;
    else before = middle;
  }
  return after;
}

/** A wait and the compartment (1–16) that needs it longest; 0 where none needs any. */
export interface Wait {
  readonly minutes: number;
  readonly leader: number;
}

/** The longest of the sixteen waits for a condition on one compartment. */
export function longestWait(
  compartments: readonly Resting[],
  holds: (resting: Resting, minutes: number) => boolean,
): Wait {
  let wait: Wait = { minutes: 0, leader: 0 };
  for (const resting of compartments) {
    // A compartment that is ready by then cannot be the last.
    if (wait.minutes === Infinity || holds(resting, wait.minutes)) continue;
    wait = { minutes: minutesUntil((minutes) => holds(resting, minutes)), leader: resting.compartment };
  }
  return wait;
}

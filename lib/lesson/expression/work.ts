/** Ends the reading of a lesson that asks the engine for more than is worked out for one. */
export class TooMuchWork extends Error {}

/** What is worked out for one lesson, in looks at a sample; those shipped need less than half of it. */
export const MOST_LOOKS = 5_000_000;

/**
 * How much of the engine's work is left for one lesson. It is counted in looks at a sample, of roughly a microsecond,
 * and not by the clock, so that a lesson is sound on every machine or on none.
 */
export class Work {
  private readonly begun = new WeakSet<object>();

  constructor(private left = MOST_LOOKS) {}

  /** Throws `TooMuchWork` when nothing is left. */
  spend(looks: number): void {
    this.left -= looks;
    if (this.left < 0) throw new TooMuchWork('this lesson asks for too much work');
  }

  /** Counts only the first time: what is worked out once is remembered. */
  begin(what: object, looks: number): void {
    if (this.begun.has(what)) return;
    this.begun.add(what);
    this.spend(looks);
  }
}

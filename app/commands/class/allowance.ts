/** So many at once, and so many a second after that, for each of whoever asks. */
export interface Allowance {
  /** Takes one; false where none is left. */
  readonly take: (who: string, nowMs: number) => boolean;
  /** Whether one is left. */
  readonly has: (who: string, nowMs: number) => boolean;
}

/** Askers that are remembered; the longest unheard-of are forgotten first, by when theirs is full again. */
const MOST_ASKERS = 20_000;

/** Counts what each may still ask, as a bucket that fills at a steady rate. */
export function allowance(most: number, perSecond: number): Allowance {
  const left = new Map<string, { amount: number; atMs: number }>();
  const now = (who: string, nowMs: number) => {
    const before = left.get(who);
    return before ? Math.min(most, before.amount + ((nowMs - before.atMs) / 1000) * perSecond) : most;
  };
  return {
    has: (who, nowMs) => now(who, nowMs) >= 1,
    take(who, nowMs) {
      const amount = now(who, nowMs);
      const taken = amount >= 1;
      left.delete(who);
      left.set(who, { amount: taken ? amount - 1 : amount, atMs: nowMs });
      if (left.size > MOST_ASKERS) left.delete(left.keys().next().value!);
      return taken;
    },
  };
}

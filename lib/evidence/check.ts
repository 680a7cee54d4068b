import type { Obtained } from '../../content/published/schema';

/** One figure of ours held against one from outside the project. */
export interface Check {
  readonly id: string;
  readonly title: string;
  readonly group: string;
  /** The figure from outside, or the range it is in as people say it. */
  readonly published: number | string;
  readonly ours: number;
  readonly unit: string;
  /** Ours less theirs; for a range, how far ours lies outside it. */
  readonly difference: number;
  /** The largest difference that still holds, in the same unit. */
  readonly tolerance: number;
  /** Why the tolerance is what it is. */
  readonly reason: string;
  readonly source: string;
  readonly obtained: Obtained;
  readonly holds: boolean;
  readonly note?: string;
}

type Given = Omit<Check, 'difference' | 'holds'>;

/** Last-bit noise of a subtraction, as a share of the tolerance. */
const ROUNDING = 1e-9;

function judged(given: Given, difference: number): Check {
  const holds = Number.isFinite(given.ours) && Math.abs(difference) <= given.tolerance * (1 + ROUNDING);
  return { ...given, difference, holds };
}

/** A check against one figure. It holds if ours is finite and no further off than the tolerance. */
export function compared(given: Given & { readonly published: number }): Check {
  return judged(given, given.ours - given.published);
}

/** A check against a range from `from` to `to`, both included. */
export function ranged({
  from,
  to,
  ...given
}: Omit<Given, 'published'> & { readonly from: number; readonly to: number }): Check {
  const outside = given.ours < from ? given.ours - from : Math.max(0, given.ours - to);
  return judged({ ...given, published: `${from} to ${to}` }, outside);
}

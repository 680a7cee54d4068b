import { printClock } from '../../quantity/duration';
import type { UnitSystem } from '../../quantity/unit-system';
import { printValue } from '../expression/print-value';
import { closeShare, isClose, sketchAt, type DrawAsked, type Sketch } from './sketch';

/** How a sketch lies beside the truth. */
export interface SketchCompared {
  /** The share of the time it is close, 0–1. */
  readonly closeShare: number;
  readonly close: boolean;
  /** One plain sentence or two. */
  readonly text: string;
}

/**
 * How a drawn curve stands to the true one: how much of the way it is close, where it is furthest off, and that in
 * words.
 */
export function compareSketch(
  sketch: Sketch,
  { truth, within, dimension, noun, format }: DrawAsked,
  system: UnitSystem,
): SketchCompared {
  const differences = truth.map(({ timeS, value }) => ({ timeS, off: sketchAt(sketch, timeS) - value, truth: value }));
  const share = closeShare(sketch, { truth, within });
  const worst = differences.reduce((most, one) => (Math.abs(one.off) > Math.abs(most.off) ? one : most));
  const print = (value: number) => printValue({ value, dimension }, system, format);
  const close = isClose(sketch, { truth, within });
  const furthest = `You are furthest off at ${printClock(worst.timeS)}: you drew ${print(worst.truth + worst.off)}, and ${noun} is ${print(worst.truth)} there.`;
  if (share === 1)
    return { closeShare: share, close, text: `Your curve is close all the way, within ${print(within)} of ${noun}.` };
  if (close) return { closeShare: share, close, text: `Your curve is close for most of the way. ${furthest}` };
  const high = differences.filter(({ off }) => off > within).length / differences.length;
  const low = differences.filter(({ off }) => off < -within).length / differences.length;
  const side = high > low ? 'too high' : 'too low';
  if (high > 0.6 || low > 0.6)
    return { closeShare: share, close, text: `You drew it ${side} most of the way. ${furthest}` };
  const lead = high > 0.15 && low > 0.15 ? turnText(differences, within) : `You drew it ${side} part of the way.`;
  return { closeShare: share, close, text: `${lead} ${furthest}` };
}

function turnText(differences: readonly { readonly off: number }[], within: number): string {
  const first = differences.find(({ off }) => Math.abs(off) > within)!.off;
  return first > 0
    ? 'You drew it too high at first and too low later.'
    : 'You drew it too low at first and too high later.';
}

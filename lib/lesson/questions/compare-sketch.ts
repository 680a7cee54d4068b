import { printClock } from '../../quantity/duration';
import type { UnitSystem } from '../../quantity/unit-system';
import { printValue } from '../expression/print-value';
import { closeShare, sketchAt, type DrawAsked, type Sketch } from './sketch';

/** How a sketch lies beside the truth, in one plain sentence or two. */
export function compareSketch(sketch: Sketch, asked: DrawAsked, system: UnitSystem): string {
  const { truth, within, dimension, noun, format, upTo } = asked;
  const differences = truth.map(({ timeS, value }) => ({ timeS, off: sketchAt(sketch, timeS) - value, truth: value }));
  const share = closeShare(sketch, asked);
  if (share === 1)
    return `Your curve is close all the way, within ${printValue({ value: within, dimension }, system, format)} of ${noun}.`;
  const worst = differences.reduce((most, one) => (Math.abs(one.off) > Math.abs(most.off) ? one : most));
  const print = (value: number) => printValue({ value, dimension }, system, format);
  // The axis ends there, and the curve goes on beyond it.
  const so = worst.truth >= upTo ? `beyond the edge of the paper, more than ${print(upTo)},` : print(worst.truth);
  const furthest = `You are furthest off at ${sayMoment(worst.timeS, asked)}: you drew ${print(worst.truth + worst.off)}, and ${noun} is ${so} there.`;
  const words =
    dimension === 'depth' ? { over: 'too deep', under: 'too shallow' } : { over: 'too high', under: 'too low' };
  const over = differences.filter(({ off }) => off > within).length / differences.length;
  const under = differences.filter(({ off }) => off < -within).length / differences.length;
  const side = over > under ? words.over : words.under;
  if (over > MOST || under > MOST) return `You drew it ${side} most of the way. ${furthest}`;
  if (over > SOME && under > SOME) {
    const first = differences.find(({ off }) => Math.abs(off) > within)!.off;
    const [early, late] = first > 0 ? [words.over, words.under] : [words.under, words.over];
    return `You drew it ${early} at first and ${late} later. ${furthest}`;
  }
  return over + under > SOME
    ? `You drew it ${side} part of the way. ${furthest}`
    : `Your curve is close for most of the way. ${furthest}`;
}

const MOST = 0.6;
const SOME = 0.15;

/** A moment as the axis counts it. */
export function sayMoment(timeS: number, { zeroS, since }: Pick<DrawAsked, 'zeroS' | 'since'>): string {
  return `${printClock(timeS - zeroS)}${since === undefined ? '' : ` after ${since}`}`;
}

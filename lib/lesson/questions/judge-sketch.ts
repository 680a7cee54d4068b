import type { World } from '../expression/world';
import { judgeCondition } from './judge';
import { isClose, sketchAt, type DrawAsked, type Sketch } from './sketch';

/** One thing that matters of a curve, and whether a sketch has it. */
export interface FeatureJudged<Told> {
  readonly name: string;
  readonly met: boolean;
  readonly because: Told;
}

export interface SketchJudged<Told> {
  readonly right: boolean;
  readonly features: readonly FeatureJudged<Told>[];
}

/** A sketch with this share of what matters, by weight, counts as right. */
const RIGHT_SHARE = 0.75;

/** The world in which `drawn` is a sketch. */
export function worldWithSketch(world: World, { dimension }: Pick<DrawAsked, 'dimension'>, sketch: Sketch): World {
  return { ...world, drawn: { dimension, at: (minutes) => sketchAt(sketch, minutes * 60) } };
}

/** A sketch judged by its features; one asked for without any, by how close it lies. */
export function judgeSketch<Told>(
  features: readonly {
    readonly name: string;
    readonly holds: string;
    readonly weight: number;
    readonly because: Told;
  }[],
  asked: DrawAsked,
  sketch: Sketch,
  world: World,
): SketchJudged<Told> {
  if (features.length === 0) return { right: isClose(sketch, asked), features: [] };
  const drawn = worldWithSketch(world, asked, sketch);
  let [held, all] = [0, 0];
  const judged = features.map(({ name, holds, weight, because }) => {
    const so = judgeCondition(holds, drawn);
    const met = so.ok && so.value;
    all += weight;
    if (met) held += weight;
    return { name, met, because };
  });
  return { right: held >= RIGHT_SHARE * all - 1e-9, features: judged };
}

/** Sketches that know nothing of a curve: level ones, the straight line between its ends, and it turned over or round. */
export function ignorantSketches({
  truth,
  upTo,
  fromS,
  toS,
}: DrawAsked): { readonly what: string; readonly sketch: Sketch }[] {
  const values = truth.map(({ value }) => value);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const level = (value: number): Sketch => [
    { timeS: fromS, value },
    { timeS: toS, value },
  ];
  const levels = [
    ...Array.from({ length: LEVELS + 1 }, (_, i) => (upTo * i) / LEVELS),
    values[0]!,
    values.at(-1)!,
    high,
  ];
  return [
    ...levels.map((value) => ({ what: 'A level line', sketch: level(value) })),
    { what: 'A straight line from end to end', sketch: [truth[0]!, truth.at(-1)!] },
    {
      what: 'The curve turned upside down',
      sketch: truth.map(({ timeS, value }) => ({ timeS, value: low + high - value })),
    },
    {
      what: 'The curve turned back to front',
      sketch: truth.map(({ timeS, value }) => ({ timeS: fromS + toS - timeS, value })).reverse(),
    },
  ];
}
const LEVELS = 12;

/** The true curve as it is typed into the boxes, each value rounded to a hundredth of the axis. */
export function typedTruth({ truth, boxesS, upTo }: DrawAsked): Sketch {
  const step = upTo / 100;
  return boxesS.map((timeS) => ({ timeS, value: Math.round(sketchAt(truth, timeS) / step) * step }));
}

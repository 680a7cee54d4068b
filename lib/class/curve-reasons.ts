import { lessonWorld, type Scripts } from '../lesson/expression/lesson-world';
import { judgeSketch } from '../lesson/questions/judge-sketch';
import type { Sketch } from '../lesson/questions/sketch';
import type { Reasons } from './lesson-ask';

/** What many curves lack. */
export interface CommonLack {
  readonly name: string;
  readonly because: string;
  readonly count: number;
}

/**
 * What the curves of a class lack, most first; nothing where the question names nothing that matters.
 * @param scripts the dives of the lesson; `script` is the one the question is about
 */
export function commonLacks(
  { draw }: Reasons,
  { scripts }: Scripts,
  script: string,
  sketches: readonly Sketch[],
  most = 3,
): CommonLack[] {
  if (!draw || draw.features.length === 0) return [];
  const name = Object.entries(scripts).find(([, one]) => one.script === script)?.[0];
  const world = lessonWorld({ scripts }).about(name);
  const lacks = new Map<string, CommonLack>();
  for (const sketch of sketches)
    for (const { name: feature, met, because } of judgeSketch(draw.features, draw.asked, sketch, world).features) {
      if (met) continue;
      lacks.set(feature, { name: feature, because, count: (lacks.get(feature)?.count ?? 0) + 1 });
    }
  return [...lacks.values()].sort((one, other) => other.count - one.count).slice(0, most);
}

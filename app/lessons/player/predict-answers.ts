import type { UnitSystem } from '@/lib/quantity/unit-system';
import { replyTo } from '@/lib/lesson/questions/judge';
import { lessonWorld, type LessonWorld } from '@/lib/lesson/expression/lesson-world';
import { compareSketch } from '@/lib/lesson/questions/compare-sketch';
import { judgeSketch, worldWithSketch } from '@/lib/lesson/questions/judge-sketch';
import type { Sketch } from '@/lib/lesson/questions/sketch';
import { withValues } from '@/lib/lesson/expression/world';
import { fillIn } from '../fill';
import type { Html, PredictStep, PreparedLesson } from '../prepared';

/* What is said to a prediction, worked out by the engine: all of it that a question on a page of its own needs. */

const worlds = new WeakMap<PreparedLesson, LessonWorld>();

/** The dives of a lesson, worked out once. */
export function worldsOf(lesson: PreparedLesson): LessonWorld {
  const known = worlds.get(lesson) ?? lessonWorld(lesson);
  worlds.set(lesson, known);
  return known;
}

/** What is said to a number that is wrong. */
export function numberReply(lesson: PreparedLesson, step: PredictStep, given: number): Html {
  const { answer, within, wrong, otherwise } = step.number!;
  const { dimension } = answer;
  const world = withValues(worldsOf(lesson).about(step.script), {
    given: { value: given, dimension },
    answer,
    within: { value: within, dimension },
  });
  return fillIn(replyTo(wrong, world) ?? otherwise, world);
}

export interface DrawVerdict {
  readonly right: boolean;
  /** How it lies beside the true curve, in words. */
  readonly text: string;
  /** What matters of the curve, and what is said where the sketch lacks it. */
  readonly features: readonly { readonly name: string; readonly met: boolean; readonly because: Html }[];
  /** What is said to a sketch as a whole, if anything fits. */
  readonly because: Html | undefined;
}

/** How a drawn curve lies beside the true one. */
export function drawVerdict(lesson: PreparedLesson, step: PredictStep, sketch: Sketch, units: UnitSystem): DrawVerdict {
  const asked = step.draw!;
  const world = worldsOf(lesson).about(step.script);
  const { right, features } = judgeSketch(asked.features, asked, sketch, world);
  const reply = right ? undefined : replyTo(asked.wrong, worldWithSketch(world, asked, sketch));
  return {
    right,
    text: compareSketch(sketch, asked, units),
    features: features.map((feature) => ({ ...feature, because: fillIn(feature.because, world) })),
    because: reply && fillIn(reply, world),
  };
}

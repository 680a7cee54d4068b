import type { LessonProgress, Prediction } from '@/lib/lesson/progress';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { drawVerdict } from '../player/predict-answers';
import type { PredictStep, PreparedLesson } from '../prepared';
import { isWithin } from '@/lib/lesson/questions/within';

/**
 * A paper with its predictions judged by the lesson as it is here: one that comes from an older copy of it, or was written
 * by hand, may say otherwise, and a class is judged alike.
 */
export function judgedAnew(lesson: PreparedLesson, paper: LessonProgress, units: UnitSystem): LessonProgress {
  const predictions = lesson.steps.flatMap((step) => {
    const made = paper.predictions[step.id];
    if (step.kind !== 'predict' || !made) return [];
    return [
      [step.id, { ...made, given: made.given.map((one) => ({ ...one, right: isRight(lesson, step, one, units) })) }],
    ] as const;
  });
  return { ...paper, predictions: { ...paper.predictions, ...Object.fromEntries(predictions) } };
}

/** An answer of another kind than the lesson asks for now is left as it was judged. */
function isRight(lesson: PreparedLesson, step: PredictStep, { answer, right }: Prediction, units: UnitSystem): boolean {
  if (answer.by === 'choice' && step.choice) return step.choice[answer.option]?.right ?? false;
  if (answer.by === 'number' && step.number)
    return isWithin(answer.value, step.number.answer.value, step.number.within);
  if (answer.by === 'draw' && step.draw) return drawVerdict(lesson, step, answer.sketch, units).right;
  return right;
}

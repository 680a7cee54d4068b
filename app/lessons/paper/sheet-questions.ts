import { lessonIn } from '../in-units';
import { inBoth } from '../with-feet';
import { askQuestion, type AskedQuestion } from '../player/engine';
import type { CheckStep, PreparedLesson } from '../prepared';

/** The seed of everything on paper, so that a sheet and its key ask the same. */
const PAPER_SEED = 7;

/** The questions of a check as they stand on paper, with the values of both systems of units. */
export function paperQuestions(lesson: PreparedLesson, step: CheckStep): AskedQuestion[] {
  const asked = (of: PreparedLesson) =>
    (of.steps.find(({ id }) => id === step.id) as CheckStep).questions.map((question, index) =>
      askQuestion(of, step, question, PAPER_SEED + index),
    );
  const metric = asked(lesson);
  return inBoth(metric, lesson.inFeet ? asked(lessonIn(lesson, 'imperial')) : metric);
}

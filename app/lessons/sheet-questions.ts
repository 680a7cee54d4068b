import { askQuestion, type AskedQuestion } from './player/engine';
import type { CheckStep, PreparedLesson } from './prepared';

/** The seed of everything on paper, so that a sheet and its key ask the same. */
const PAPER_SEED = 7;

/** The questions of a check as they stand on paper. */
export function paperQuestions(lesson: PreparedLesson, step: CheckStep): AskedQuestion[] {
  return step.questions.map((question, index) => askQuestion(lesson, step, question, PAPER_SEED + index));
}

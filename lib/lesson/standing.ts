import type { LessonProgress } from './progress';

/** What of a step asks for something, by the keys its answers are kept under. */
export interface StepAsks {
  readonly id: string;
  readonly asks: 'nothing' | 'prediction' | 'goal' | 'questions';
  /** Of a check: `step/question`. */
  readonly keys: readonly string[];
}

/** How far a learner has come: what was seen, what was answered, and whether both is all there is. */
export interface Standing {
  readonly seen: number;
  readonly steps: number;
  readonly answered: number;
  readonly questions: number;
  readonly done: boolean;
}

/** What the steps of a lesson ask for. */
export function stepAsks(
  steps: readonly {
    readonly id: string;
    readonly kind: string;
    readonly questions?: readonly { readonly id: string }[];
  }[],
): StepAsks[] {
  return steps.map(({ id, kind, questions = [] }) => ({
    id,
    asks: kind === 'predict' ? 'prediction' : kind === 'try' ? 'goal' : kind === 'check' ? 'questions' : 'nothing',
    keys: questions.map((question) => `${id}/${question.id}`),
  }));
}

/** How many things a step asks for and how many of them have been answered; one looked at without an answer has not. */
export function answeredIn(
  { id, asks, keys }: StepAsks,
  { predictions, tries, checks }: LessonProgress,
): { readonly answered: number; readonly questions: number } {
  if (asks === 'nothing') return { answered: 0, questions: 0 };
  if (asks === 'prediction') return { answered: (predictions[id]?.given.length ?? 0) > 0 ? 1 : 0, questions: 1 };
  if (asks === 'goal') return { answered: tries[id]?.met === undefined ? 0 : 1, questions: 1 };
  return { answered: keys.filter((key) => checks[key] !== undefined).length, questions: keys.length };
}

/** How far a learner is in a lesson of these steps: which are seen, and how many of the questions are answered. */
export function standingIn(steps: readonly StepAsks[], progress: LessonProgress): Standing {
  const counts = steps.map((step) => answeredIn(step, progress));
  const seen = steps.filter(({ id }) => progress.seen.includes(id)).length;
  const answered = counts.reduce((sum, one) => sum + one.answered, 0);
  const questions = counts.reduce((sum, one) => sum + one.questions, 0);
  return { seen, steps: steps.length, answered, questions, done: seen === steps.length && answered === questions };
}

import type { PredictStep, PreparedLesson, RunStep } from '../prepared';

/** The steps of a page of a question, in the order they are taken. */
export function stepsOf({ steps }: PreparedLesson): { readonly question: PredictStep; readonly run?: RunStep } {
  const [question, run] = steps;
  if (question?.kind !== 'predict') throw new Error('a page of a question has none');
  return run?.kind === 'run' ? { question, run } : { question };
}

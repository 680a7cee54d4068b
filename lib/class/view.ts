import * as z from 'zod';
import { fits, type SentAnswer } from './answer';
import { MOST_ROUNDS } from './bounds';
import { askSchema, truthSchema } from './ask';
import { currentOf, type ClassState } from './class-state';
import { answersOf, spreadOf, spreadSchema } from './spread';

/*
 * What all phones of a class see. It is made on the teacher's page and passed on by the server as it is; nothing of one
 * phone is in it.
 */

/** The longest view that is passed on, bytes: a dive to follow, a question with its picture, two spreads and the truth. */
export const MOST_VIEW_BYTES = 96 * 1024;

export const viewSchema = z.strictObject({
  /** Rises with every change. */
  version: z.number().int().min(0),
  question: z
    .strictObject({
      ask: askSchema,
      phase: z.enum(['asking', 'closed', 'spread', 'truth']),
      round: z
        .number()
        .int()
        .min(0)
        .max(MOST_ROUNDS - 1),
      /** From the moment the teacher shows it, round by round. */
      spreads: z.array(spreadSchema).max(MOST_ROUNDS),
      truth: truthSchema.optional(),
    })
    .optional(),
  follow: z
    .strictObject({
      mode: z.enum(['follow', 'free']),
      title: z.string().max(200),
      script: z.string().min(1).max(20_000),
      covered: z.array(z.string().max(40)).max(30),
    })
    .optional(),
});
export type ClassView = z.infer<typeof viewSchema>;
export type QuestionView = NonNullable<ClassView['question']>;

/** What phones see of a class. The spread goes out once it is shown, the truth once it is run. */
export function viewOf(state: ClassState, version: number): ClassView {
  const one = currentOf(state);
  if (!one) return { version, follow: state.follow };
  const { ask, phase, rounds, truth } = one;
  const round = rounds.length - 1;
  const open = phase === 'spread' || phase === 'truth';
  return {
    version,
    follow: state.follow,
    question: {
      ask,
      phase,
      round,
      spreads: open ? rounds.map((_, i) => spreadOf(ask, answersOf(one, i))) : [],
      truth: phase === 'truth' ? truth : undefined,
    },
  };
}

/**
 * Why an answer is not taken; undefined where it is.
 * @param wasAway the phone could not send while the question was open: until the spread is shown, what it brings counts
 */
export function notTaken(
  view: ClassView | undefined,
  { ask, round, answer }: Pick<SentAnswer, 'ask' | 'round' | 'answer'>,
  wasAway = false,
): string | undefined {
  const question = view?.question;
  if (!question || question.ask.id !== ask || question.round !== round)
    return 'That question is no longer before the class; look at the one that is.';
  if (question.phase !== 'asking' && !(wasAway && question.phase === 'closed'))
    return 'The question is closed; wait for the next.';
  if (!fits(answer, question.ask)) return 'That is no answer to this question; reload the page.';
  return undefined;
}

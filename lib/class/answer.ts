import * as z from 'zod';
import { MOST_OPTIONS, MOST_ROUNDS, MOST_SKETCH_POINTS } from './bounds';

/*
 * What a phone may send. All of it is bounded here, so that nothing larger is kept, passed on or drawn.
 */

const finite = z.number().min(-1e6).max(1e6);

export const answerSchema = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('choice'),
    option: z
      .number()
      .int()
      .min(0)
      .max(MOST_OPTIONS - 1),
  }),
  /** In the unit of the lesson's expressions: metres, minutes, bar. */
  z.strictObject({ by: z.literal('number'), value: finite }),
  z.strictObject({
    by: z.literal('draw'),
    sketch: z
      .array(z.strictObject({ timeS: finite, value: finite }))
      .min(1)
      .max(MOST_SKETCH_POINTS),
  }),
  z.strictObject({ by: z.literal('leader'), compartment: z.number().int().min(1).max(16) }),
]);
export type ClassAnswer = z.infer<typeof answerSchema>;

const WRITING = /^[\p{L}\p{M}\p{N} .,'’()_-]*$/u;

/** A nickname: optional, seen by the teacher alone, letters and digits only. */
export const nameSchema = z.string().trim().max(24).regex(WRITING);

export const codeText = z.string().regex(/^[2-9A-Z]{6}$/);
export const phoneId = z.string().regex(/^[A-Za-z0-9_-]{8,24}$/);
export const askId = z.string().regex(/^[a-z0-9-]{1,40}$/);
const round = z
  .number()
  .int()
  .min(0)
  .max(MOST_ROUNDS - 1);

/** One answer as it travels. `nth` counts the answers of one phone, so that a newer one is known from an older. */
export const sentAnswerSchema = z.strictObject({
  ask: askId,
  round,
  nth: z.number().int().min(1).max(1_000_000),
  answer: answerSchema,
});
export type SentAnswer = z.infer<typeof sentAnswerSchema>;

export const joinSchema = z.strictObject({ code: codeText, name: nameSchema.default('') });

/** The kind of answer that fits a question, and whether it lies within it. */
export function fits(
  answer: ClassAnswer,
  asked: { readonly by: ClassAnswer['by']; readonly options?: readonly unknown[] },
): boolean {
  if (answer.by !== asked.by) return false;
  return answer.by !== 'choice' || answer.option < (asked.options?.length ?? 0);
}

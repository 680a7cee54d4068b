import * as z from 'zod';

/*
 * How a question is answered, and what is said to each answer. Answers are expressions (see expression.ts): the engine
 * works them out, so that no lesson can disagree with it.
 */

/** An expression over the documented facts. */
export const expressionText = z.string().trim().min(1).max(400);

const DEEPEST = 8;
/** More levels of quotes and lists than that, opened on one line: a reader of Markdown goes down into each and may fall. */
const TOO_DEEP = new RegExp(`^[ \\t]*(?:>[ \\t]*|(?:[-*+]|\\d{1,9}[.)])[ \\t]+){${DEEPEST + 1}}`, 'm');
/** More marks of emphasis in one text take a reader of Markdown ever longer. */
const MOST_MARKS = 200;

const markdown = (longest: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(longest)
    .refine((text) => !TOO_DEEP.test(text), `quotes and lists go more than ${DEEPEST} levels deep on one line`)
    .refine(
      (text) => (text.match(/[*_~]+/g)?.length ?? 0) <= MOST_MARKS,
      `this text has more than ${MOST_MARKS} marks of emphasis`,
    );

/** Markdown with `{{expression}}` wherever a number comes from the engine or is to be read in the reader's units. */
export const prose = markdown(8000);
/** One or two sentences of the same. */
export const sentence = markdown(900);
/** How a value is printed, such as `min down`; see print-value.ts. */
const formatText = z.string().trim().min(1).max(20);

/** Said to an answer for which a condition holds. The first that holds is said. */
export const replySchema = z.strictObject({ when: expressionText, because: sentence });

/** One of several answers in words. Which is right is worked out (`holds`) or, where no figure decides it, stated (`right`). */
const optionSchema = z.strictObject({
  text: sentence,
  holds: expressionText.optional(),
  right: z.literal(true).optional(),
  /** Why this answer is right, or why it tempts and is not. */
  because: sentence,
});

export const choiceSchema = z.array(optionSchema).min(2).max(6);

/** A number the learner gives. In the conditions of `wrong`: `given`, `answer` and `within`. */
export const numberSchema = z.strictObject({
  answer: expressionText,
  /** How far off still counts. */
  within: expressionText,
  as: formatText.optional(),
  wrong: z.array(replySchema).max(8).default([]),
  /** Said to any other wrong answer. */
  otherwise: sentence,
});

/** A number among others: the right one is worked out, and so is each wrong one, by the mistake that leads to it. */
export const pickSchema = z.strictObject({
  answer: expressionText,
  as: formatText.optional(),
  because: sentence,
  others: z
    .array(z.strictObject({ value: expressionText, because: sentence }))
    .min(1)
    .max(5),
});

/** Something that matters of a curve: where it starts, turns, drops, reaches nothing. `drawn at <moment>` is what was drawn. */
export const featureSchema = z.strictObject({
  /** In a few words, without the value: "where it begins". */
  name: z.string().trim().min(1).max(90),
  holds: expressionText,
  /** How much of the judgement it is. */
  weight: z.number().int().min(1).max(5).default(1),
  /** Said where it does not hold. */
  because: sentence,
});

/** A curve the learner draws on the real axes, judged by its features; without any, by how close it lies. */
export const drawSchema = z.strictObject({
  /** A fact with a value at every moment, such as `noStopMin` or `tensionBar(1)`. */
  curve: expressionText,
  script: z.string().optional(),
  from: expressionText.default('start'),
  to: expressionText.default('surfacing'),
  /** Where the axis ends, in the fact's unit. */
  upTo: expressionText,
  /** How far off a point may be and still count as close. */
  within: expressionText,
  features: z.array(featureSchema).max(9).default([]),
  /** Moments with a box to type the value into; where the dive bends unless told. */
  boxes: z.array(expressionText).min(3).max(9).optional(),
  wrong: z.array(replySchema).max(8).default([]),
});

export type Feature = z.infer<typeof featureSchema>;
export type Reply = z.infer<typeof replySchema>;
export type Option = z.infer<typeof optionSchema>;
export type NumberAnswer = z.infer<typeof numberSchema>;
export type PickAnswer = z.infer<typeof pickSchema>;
export type DrawAnswer = z.infer<typeof drawSchema>;

import * as z from 'zod';
import { askId } from './answer';
import { MOST_OPTIONS, MOST_REPLIES } from './bounds';
import { wordsSchema } from './words';

/** A value as it is read in each system of units. */
const printed = z.strictObject({ metric: z.string().max(60), imperial: z.string().max(60) });
const amount = z.number().min(-1e6).max(1e6);
const curve = z
  .array(z.strictObject({ timeS: amount, value: amount }))
  .min(1)
  .max(400);

const DIMENSIONS = [
  'plain',
  'depth',
  'time',
  'pressure',
  'rate',
  'percent',
  'density',
  'volume',
  'compartment',
] as const;
const dimension = z.enum(DIMENSIONS);

/** The depth of a dive over its time, cut where it would answer the question. */
const depthLine = z.strictObject({
  points: z
    .array(z.tuple([amount, amount]))
    .min(2)
    .max(300),
});
export type DepthLine = z.infer<typeof depthLine>;

const common = {
  id: askId,
  title: z.string().min(1).max(200),
  /** The question in plain words, where it is in no lesson. */
  text: wordsSchema.optional(),
  /** Where its words are: a phone reads them from the site itself, so that no markup ever travels. */
  source: z
    .strictObject({ lesson: z.string().regex(/^[a-z0-9-]{1,80}$/), question: z.string().regex(/^[a-z0-9/-]{1,90}$/) })
    .optional(),
  picture: depthLine.optional(),
};

/** A question as phones get it: nothing in it says what is right. */
export const askSchema = z.discriminatedUnion('by', [
  z.strictObject({
    ...common,
    by: z.literal('choice'),
    options: z.array(wordsSchema).min(2).max(MOST_OPTIONS),
  }),
  z.strictObject({ ...common, by: z.literal('number'), dimension }),
  z.strictObject({
    ...common,
    by: z.literal('draw'),
    axes: z.strictObject({
      fromS: amount,
      toS: amount,
      dimension,
      upTo: amount,
      noun: z.string().max(120),
      zeroS: amount,
      since: z.literal('surfacing').optional(),
      boxesS: z.array(amount).min(2).max(12),
    }),
  }),
  z.strictObject({ ...common, by: z.literal('leader') }),
]);
export type Ask = z.infer<typeof askSchema>;
export type AskOf<By extends Ask['by']> = Extract<Ask, { by: By }>;

const compartment = z.number().int().min(1).max(16);

/** What is said to a number, from one value to below another; open where there is no end. */
const numberReply = z.strictObject({ from: amount.optional(), to: amount.optional(), words: wordsSchema });

/**
 * What the engine says to a question. A question of the teacher's own may have no right answer. `because` is why other
 * answers are wrong, where the question is in no lesson of the shelf, whose reasons a page reads from the site.
 */
export const truthSchema = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('choice'),
    right: z.number().int().min(0).max(MOST_OPTIONS).optional(),
    because: z.array(wordsSchema).max(MOST_OPTIONS).optional(),
  }),
  z.strictObject({
    by: z.literal('number'),
    value: amount,
    within: amount,
    printed,
    because: z.array(numberReply).max(MOST_REPLIES).optional(),
  }),
  z.strictObject({ by: z.literal('draw'), curve, within: amount }),
  z.strictObject({
    by: z.literal('leader'),
    compartment,
    because: z
      .array(z.strictObject({ compartment, words: wordsSchema }))
      .max(16)
      .optional(),
  }),
]);
export type Truth = z.infer<typeof truthSchema>;
export type TruthOf<By extends Truth['by']> = Extract<Truth, { by: By }>;

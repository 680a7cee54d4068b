import * as z from 'zod';
import { scenarios } from '@/content/scenarios/scenarios';

/** A term of the trade, explained for someone who meets it for the first time. */
const termSchema = z.strictObject({
  /** How links name it. */
  id: z.string().regex(/^[a-z][a-z0-9-]*$/),
  term: z.string().trim().min(1).max(60),
  /** Other words for the same, in use in the trade. */
  also: z.array(z.string().trim().min(1).max(60)).max(5).default([]),
  /** One to three sentences of Markdown, with links to other terms. */
  means: z.string().trim().min(1).max(700),
  /** The ready dive that shows it. */
  dive: z.enum(scenarios.map(({ id }) => id)).optional(),
});

export const glossarySchema = z
  .array(termSchema)
  .refine((all) => new Set(all.map(({ id }) => id)).size === all.length, 'two terms have the same id');

export type Term = z.infer<typeof termSchema>;

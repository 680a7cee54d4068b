import * as z from 'zod';

/** The what-if of bubbles that hinder washout. Illustrative throughout: nobody knows these figures. */
export const slowedWashoutSchema = z.strictObject({
  on: z.boolean().default(false),
  /** What washout half-times are multiplied by. */
  times: z.number().min(1).max(10).default(2),
  /** For so long after each breach of the rate limit, min. */
  forMin: z.number().min(1).max(1440).default(30),
});
export type SlowedWashoutSettings = z.infer<typeof slowedWashoutSchema>;

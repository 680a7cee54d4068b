import * as z from 'zod';
import type { RateLimit } from './rate-limits';

/** What a rate limit may be: one figure, or one for each band of depth with a band that begins at the surface. */
export const rateLimitSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('steady'), mMin: z.number().positive().max(60) }),
  z.strictObject({
    kind: z.literal('banded'),
    bands: z
      .array(z.strictObject({ fromM: z.number().min(0).max(350), mMin: z.number().positive().max(60) }))
      .min(1)
      .refine((bands) => bands.some(({ fromM }) => fromM === 0), 'one of the bands has to begin at the surface'),
  }),
]) satisfies z.ZodType<RateLimit>;

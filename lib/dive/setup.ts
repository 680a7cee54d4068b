import * as z from 'zod';
import { ALTITUDE_RANGE_M } from '../physics/atmosphere';
import { WATERS } from '../physics/water';
import { DEPTH_OFFSET_RANGE_M, DEPTH_SCALE_RANGE, LONGEST_SETUP_NAME, MOST_MEMORY_LOSSES } from './bounds';
import { gasSchema } from './gas-schema';

/**
 * An instrument that watches the dive, as plain data: what it is set to and what is wrong with it. What is left out is
 * as the dive really is. It is told the depths by its own sensor, zeroed at the surface.
 */
export const setupSchema = z.object({
  name: z
    .string()
    .trim()
    .min(1)
    .max(LONGEST_SETUP_NAME)
    .regex(/^[^,;#"\r\n]+$/, 'a name is written without a comma, semicolon, quotation mark or #'),
  /** In gauge mode a unit measures depth and time and works out nothing. */
  mode: z.enum(['dive', 'gauge']).default('dive'),
  /** The gas it is set to at the start of each dive. */
  gas: gasSchema.optional(),
  altitudeM: z.number().min(ALTITUDE_RANGE_M[0]).max(ALTITUDE_RANGE_M[1]).optional(),
  water: z.enum(WATERS).optional(),
  gradientFactors: z
    .object({ low: z.number().gt(0).max(1), high: z.number().gt(0).max(1) })
    .refine((gf) => gf.low <= gf.high, 'the low gradient factor is higher than the high one')
    .optional(),
  /** What its sensor adds to every depth, m. */
  depthOffsetM: z.number().min(DEPTH_OFFSET_RANGE_M[0]).max(DEPTH_OFFSET_RANGE_M[1]).default(0),
  /** What its sensor multiplies every depth by; 1 is right. */
  depthScale: z.number().min(DEPTH_SCALE_RANGE[0]).max(DEPTH_SCALE_RANGE[1]).default(1),
  /** Dives (from 0) before which its memory was lost or it was swapped for another: it starts each with fresh tissues. */
  freshBeforeDives: z.array(z.number().int().min(1).max(50)).max(MOST_MEMORY_LOSSES).default([]),
});

export type Setup = z.infer<typeof setupSchema>;

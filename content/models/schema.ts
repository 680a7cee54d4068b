import * as z from 'zod';
import { OBTAINED } from '../published/schema';

const said = z.string().min(1);
const obtained = z.enum(OBTAINED);

/** A choice the makers of a model made about pressures, and what comes of it. */
const convention = z.strictObject({ value: z.number().min(0), obtained, text: said });

/** What is told of a limit model besides its constants, which are in `content/published`. */
export const modelSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/),
  name: said,
  year: z.number().int().min(1900).max(2100),
  source: said,
  /** What the limit is, in a sentence. */
  limit: said,
  conventions: z.strictObject({
    /** Fraction of nitrogen taken for air, 0–1. */
    airNitrogen: convention,
    /** Ambient pressure that is not breathed gas, bar. */
    lungOffsetBar: convention,
  }),
  /** What it changed from the model before it, and why. */
  changed: z.array(z.strictObject({ what: said, why: said, obtained })).min(1),
});

/** Every file beside this one, oldest model first. */
export const MODEL_FILES = [
  'haldane-1908.json',
  'workman-1965.json',
  'zh-l16a.json',
  'zh-l16b.json',
  'zh-l16c.json',
] as const;

export type ModelFile = z.infer<typeof modelSchema>;

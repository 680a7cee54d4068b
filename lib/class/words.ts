import * as z from 'zod';
import type { UnitSystem } from '../quantity/unit-system';

const plain = z.string().max(1000);

/** Plain text: the same for everyone, or as it is read in each system of units. Never markup. */
export const wordsSchema = z.union([plain, z.strictObject({ metric: plain, imperial: plain })]);
export type Words = z.infer<typeof wordsSchema>;

/** Words as a reader of a system of units reads them. */
export function inUnits(words: Words, system: UnitSystem): string {
  return typeof words === 'string' ? words : words[system];
}

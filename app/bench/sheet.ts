import * as z from 'zod';
import { readyRuns } from '@/content/bench/runs';
import {
  benchSettingsSchema,
  benchUnitSchema,
  DEFAULT_BENCH,
  MOST_UNITS,
  readingSchema,
  sheetAboutSchema,
} from '@/lib/bench/bench-settings';

/** A sheet: the run, the chamber, the units in it and what they showed. Kept in this browser as it is filled in. */
export const sheetSchema = z.object({
  script: z.string().max(200_000),
  settings: benchSettingsSchema,
  about: sheetAboutSchema.prefault({}),
  units: z.array(benchUnitSchema).max(MOST_UNITS),
  /** By unit, then by the name of the checkpoint. */
  readings: z.record(z.string(), z.record(z.string(), readingSchema)),
  /** When each step of a live run was begun, s since 1970. */
  marks: z.array(z.number()).max(5000),
});
export type Sheet = z.output<typeof sheetSchema>;

export const FRESH_SHEET: Sheet = {
  script: readyRuns[0].script,
  settings: DEFAULT_BENCH,
  about: sheetAboutSchema.parse({}),
  units: [benchUnitSchema.parse({ id: 'unit-1', name: 'Unit 1' })],
  readings: {},
  marks: [],
};

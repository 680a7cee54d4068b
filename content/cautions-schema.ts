import * as z from 'zod';

/** What the cautions have to be. They ship with the app, so it is the tests that ask, and not each visitor's browser. */
export const cautionsSchema = z.strictObject({
  general: z.string().min(1),
  unknown: z.string().min(1),
  deepCourse: z.string().min(1),
  chamber: z.string().min(1),
  watermark: z.string().min(1).max(40),
});

import * as z from 'zod';

/** A dive to begin with on the desk. All are invented, and ship with the app: it is the tests that hold them to this. */
export const scenarioSchema = z.strictObject({
  id: z.string().regex(/^[a-z-]+$/),
  title: z.string().min(1),
  /** What a class is meant to see in it. */
  shows: z.string().min(1),
  script: z.string().min(1),
  /** A moment at which it shows what it is for, s since the start: the desk opens it there. */
  stillS: z.number().positive(),
  /** The same for those who think in feet: a dive of its own, in round feet. */
  inFeet: z.strictObject({ title: z.string().min(1), shows: z.string().min(1), script: z.string().min(1) }),
  /** The desk's pictures that show it best, where the usual ones do not. */
  pictures: z.array(z.string()).optional(),
});
export type Scenario = z.infer<typeof scenarioSchema>;

import * as z from 'zod';
import { OBTAINED } from '../published/schema';

const said = z.string().min(1);
const TABLES = ['navy-revision-7', 'navy-revision-4', 'table-1986'] as const;
const obtained = z.enum(OBTAINED);

/** How published no-stop tables count, so that they can be laid over a curve. */
export const overlaysSchema = z.array(
  z.strictObject({
    id: z.enum(TABLES),
    name: said,
    /** Altitude the rows are meant for, m. */
    altitudeM: z.number().min(0),
    /** The way down counts as bottom time, at this rate, m/min. */
    descentMMin: z.strictObject({ value: z.number().positive(), obtained }),
  }),
);

/** Why each of them says something else than the model, in words. */
export const differencesSchema = z.array(
  z.strictObject({
    id: z.enum(TABLES),
    /** From when the time at depth counts, and how fast the way down is. */
    descent: said,
    /** Times are cut down to whole minutes; the reason a person may read. */
    wholeMinutes: said,
    /** What is left when all that can be counted has been. */
    remainder: z.array(said).min(1),
  }),
);

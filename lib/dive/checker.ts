import * as z from 'zod';

/** The parts of the checker of data that settings are described with: handed over whole, it would be fetched whole. */
export const checker = { enum: z.enum, number: z.number, object: z.object };
export type Checker = typeof checker;

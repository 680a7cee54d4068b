import * as z from 'zod';

const fraction = z.number().min(0).max(1);

/** A breathing gas as data: fractions of oxygen and helium, 0–1; the rest is nitrogen. */
export const gasSchema = z
  .object({ o2: fraction, he: fraction })
  .refine((gas) => gas.o2 + gas.he <= 1 + 1e-9, 'oxygen and helium together are more than 100 %');

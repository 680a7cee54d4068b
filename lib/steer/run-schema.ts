import * as z from 'zod';
import { DEEPEST_STEERED_M, LONGEST_STEERED_S } from './run';

/** A point a second is the most there can be. */
const MOST_POINTS = LONGEST_STEERED_S + 2;

/** A run as it is kept: as many depths as times, which begin at 0 and rise. */
export const steerRunSchema = z
  .object({
    timesS: z.array(z.number().min(0).max(LONGEST_STEERED_S)).min(1).max(MOST_POINTS),
    depthsM: z.array(z.number().min(0).max(DEEPEST_STEERED_M)).min(1).max(MOST_POINTS),
  })
  .refine(({ timesS, depthsM }) => timesS.length === depthsM.length && timesS[0] === 0 && depthsM[0] === 0)
  .refine(({ timesS }) => timesS.every((timeS, i) => i === 0 || timeS > timesS[i - 1]!));

import type { Timeline } from '@/lib/dive/timeline';
import { stepsIn } from '@/lib/quantity/rounding';

const MOST_ROWS = 90;
const STEPS_S = [10, 30, 60, 120, 300, 600, 1800, 3600, 7200];

/** The samples a table of a whole dive shows: where each leg begins, the last one, and every so often between. */
export function tableSamples({ timeS, leg, length }: Timeline): number[] {
  const endS = timeS[length - 1]!;
  const everyS = STEPS_S.find((step) => endS / step <= MOST_ROWS) ?? 24 * 3600;
  const chosen: number[] = [];
  let nextS = 0;
  for (let i = 0; i < length; i += 1) {
    if (timeS[i]! < nextS && i < length - 1 && leg[i] === leg[i - 1]) continue;
    chosen.push(i);
    nextS = (stepsIn(timeS[i]!, everyS) + 1) * everyS;
  }
  return chosen;
}

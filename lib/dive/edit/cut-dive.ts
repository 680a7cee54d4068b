import type { Dive, Step } from '../dive';
import { SHORTEST_S } from '../bounds';
import { legsOf } from '../legs';

/** The same dive as far as a moment, s since it began: what comes after is not in it. */
export function cutDive(dive: Dive, atS: number): Dive {
  const { legs } = legsOf(dive);
  const steps = dive.steps.flatMap((step, index): Step[] => {
    const leg = legs.find((one) => one.step === index);
    if (!leg || !('durationS' in step)) {
      const next = legs.find((one) => one.step > index);
      return next && next.startS < atS ? [step] : [];
    }
    if (leg.endS <= atS) return [step];
    const durationS = atS - leg.startS;
    if (durationS < SHORTEST_S) return [];
    const toM = leg.fromM + ((leg.toM - leg.fromM) * durationS) / (leg.endS - leg.startS);
    return ['toM' in step ? { ...step, toM, durationS } : { ...step, durationS }];
  });
  return { ...dive, steps, lines: [] };
}

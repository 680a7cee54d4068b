import type { Dive } from '../dive/dive';
import { legsOf } from '../dive/legs';

/** Deeper than this a dive is no recreational one, m: common practice, with no single source. */
const DEEP_M = 40;

/** Whether a dive is deep, or staged on more than one gas: then a caution of its own stands over it. */
export function needsDeepCaution(dive: Dive): boolean {
  const { legs } = legsOf(dive);
  return (
    dive.steps.some(({ kind }) => kind === 'switch') ||
    dive.settings.carried.length > 0 ||
    legs.some(({ toM }) => toM > DEEP_M)
  );
}

import type { Dive } from '../dive/dive';
import { samplingOf, type Sampling } from '../dive/sampling';
import { legsOf } from '../dive/legs';
import { legRateMMin } from '../dive/script/leg-rate';
import { fastestWithin } from '../quantity/rate';
import { SET_RIGHT } from '../dive/edit/set-right';
import type { RuleSettings } from '../rules/all';
import { leastRateLimit } from '../rules/settings/rate-limits';
import { watchDive, type Watch } from '../rules/watch';
import type { Trouble } from './trouble';
import { DUST } from '../quantity/rounding';

/** As finely as the desk samples. */
export function finely(dive: Dive): Sampling {
  return samplingOf(dive, 10);
}

/** Every rise of a dive that a unit set right calls too fast. */
export function breachesIn(dive: Dive, rules: RuleSettings): Trouble[] {
  if (neverTooFast(dive, rules)) return [];
  const { everyS, intervalEveryS } = finely(dive);
  return breachesOf(watchDive(dive, SET_RIGHT, rules, everyS, { intervalEveryS }));
}

/** Every rise a unit calls too fast. */
export function breachesOf({ toldOnTheWay, timeline }: Watch): Trouble[] {
  return toldOnTheWay
    .filter(({ kind }) => kind === 'slow-down')
    .map(({ timeS }) => ({ timeS, diveNumber: timeline.legs.findLast(({ startS }) => startS <= timeS)!.diveNumber }));
}

/** Where every climb keeps the least limit there is, an average of them keeps the limit at its depth. */
function neverTooFast(dive: Dive, { rateWatch }: RuleSettings): boolean {
  const leastMMin = fastestWithin(leastRateLimit(rateWatch.limit));
  return (
    !rateWatch.on ||
    legsOf(dive).legs.every(
      ({ fromM, toM, startS, endS }) => toM >= fromM || legRateMMin(fromM, toM, endS - startS) <= leastMMin + DUST,
    )
  );
}

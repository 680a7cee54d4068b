import { legRateMMin } from '../../dive/script/leg-rate';
import { ScriptPage } from '../../dive/script/page';
import type { Leg } from '../../dive/legs';
import { METRES_PER_FOOT } from '../../quantity/length';
import { fastestWithin, printRate, printRateLimit } from '../../quantity/rate';
import type { UnitSystem } from '../../quantity/unit-system';
import { rateLimitAt } from '../../rules/settings/rate-limits';
import { wayUpOf, type Day } from '../day';
import { finished, setRate } from '../changes';
import { rateFigure, type Asked, type Lever, type NoRoom, type Range, type Try } from '../lever';
import { sayMinutes } from '../words';
import { DUST, stepsIn, stepsTo } from '../../quantity/rounding';

const STEP_M_MIN = 1;
const STEP_FT_MIN = 5;
const WAY_UP_BEGINS = 'before the way up begins';

/** The whole way up at a slower rate. */
export const slowerAllTheWay: Lever = {
  id: 'slower-all-the-way',
  title: 'Come up slower all the way',
  avoids: ['stop', 'ceiling', 'slow-down'],
  range: (asked) => slower(asked, wayUpOf(asked.dive), 'over the whole way up'),
};

/** Slower only where a unit called the rise too fast. */
export const slowerWhereTooFast: Lever = {
  id: 'slower-where-too-fast',
  title: 'Come up slower where it was too fast',
  avoids: ['stop', 'ceiling', 'slow-down'],
  range(asked) {
    const { dive } = asked;
    const breaches = asked.breaches().filter(({ diveNumber }) => diveNumber === dive.number);
    if (breaches.length === 0) return { none: 'No rise of this dive was too fast: there is none to slow.' };
    const climbs = dive.legs.filter(
      ({ startS, endS, fromM, toM }) =>
        toM < fromM && breaches.some(({ timeS }) => timeS > startS && timeS <= endS + 5),
    );
    return slower(asked, climbs, 'where it was too fast');
  },
};

/** The whole way up at a faster rate, as far as the unit allows one. */
export const fasterAllTheWay: Lever = {
  id: 'faster-all-the-way',
  title: 'Come up faster all the way',
  avoids: ['stop', 'ceiling'],
  range({ day, dive, rules }) {
    const climbs = wayUpOf(dive);
    const { system } = day;
    const from = climbs.length > 0 ? Math.min(...climbs.map(rateOf)) : Infinity;
    const { limit } = rules.rateWatch;
    const limitMMin = Math.min(...climbs.flatMap(({ fromM, toM }) => [fromM, toM].map((m) => rateLimitAt(limit, m))));
    const mostMMin = system === 'metric' ? limitMMin : fastestWithin(limitMMin);
    const fastest = Math.max(...climbs.map(rateOf));
    if (climbs.length === 0) return { none: 'This dive has no way up to change.' };
    if (fastest >= mostMMin - DUST)
      return {
        none: `The way up reaches ${printRate(fastest, system)}, and the unit allows no more than ${printRateLimit(limitMMin, system)}.`,
      };
    function* tries(): Generator<Try> {
      for (const rateMMin of rates(from, mostMMin, system)) {
        const savedMin = climbs.reduce((sum, leg) => sum + gained(leg, rateMMin, 'faster'), 0);
        yield {
          to: rateFigure(rateMMin, system),
          doing: `Coming up at ${printRate(rateMMin, system)} over the whole way up`,
          cost: `the way up ${sayMinutes(savedMin)} shorter`,
          script: () =>
            withRate(
              day,
              climbs.filter((leg) => rateOf(leg) < rateMMin),
              rateMMin,
            ),
        };
      }
    }
    return {
      from: rateFigure(from, system),
      unit: unitOf(system),
      tries: tries(),
      even: `Even coming up at ${printRateLimit(limitMMin, system)}, which is all the unit allows,`,
      changesFrom: { timeS: climbs[0]!.startS, called: WAY_UP_BEGINS },
    };
  },
};

function slower({ day }: Asked, climbs: readonly Leg[], where: string): Range | NoRoom {
  if (climbs.length === 0) return { none: 'This dive has no way up to change.' };
  const { system } = day;
  const from = Math.max(...climbs.map(rateOf));
  function* tries(): Generator<Try> {
    for (const rateMMin of rates(from, 0, system)) {
      const lostMin = climbs.reduce((sum, leg) => sum + gained(leg, rateMMin, 'slower'), 0);
      yield {
        to: rateFigure(rateMMin, system),
        doing: `Coming up at ${printRate(rateMMin, system)} ${where}`,
        cost: `the way up ${sayMinutes(lostMin)} longer`,
        script: () =>
          withRate(
            day,
            climbs.filter((leg) => rateOf(leg) > rateMMin),
            rateMMin,
          ),
      };
    }
  }
  const leastMMin = system === 'metric' ? STEP_M_MIN : STEP_FT_MIN * METRES_PER_FOOT;
  return {
    from: rateFigure(from, system),
    unit: unitOf(system),
    tries: tries(),
    even: `Even coming up at ${printRate(leastMMin, system)} ${where}`,
    changesFrom: { timeS: climbs[0]!.startS, called: WAY_UP_BEGINS },
  };
}

function withRate(day: Day, climbs: readonly Leg[], rateMMin: number): string | undefined {
  const page = new ScriptPage(day.script);
  for (const { step } of climbs) setRate(page, step, rateMMin, day.system);
  return finished(page);
}

/** Round rates from one towards another, without the first; the last where it is no round one. */
function* rates(from: number, to: number, system: UnitSystem): Generator<number> {
  const step = system === 'metric' ? STEP_M_MIN : STEP_FT_MIN * METRES_PER_FOOT;
  if (to < from) {
    for (let n = stepsTo(from, step) - 1; n * step > to + DUST; n -= 1) yield n * step;
    return;
  }
  for (let n = stepsIn(from, step) + 1; n * step <= to + DUST; n += 1) yield n * step;
}

function rateOf({ fromM, toM, startS, endS }: Leg): number {
  return legRateMMin(fromM, toM, endS - startS);
}

/** Minutes by which a climb becomes longer or shorter at a rate; none where it was as slow, or as fast, already. */
function gained(leg: Leg, rateMMin: number, way: 'slower' | 'faster'): number {
  const difference = Math.abs(leg.toM - leg.fromM) / rateMMin - (leg.endS - leg.startS) / 60;
  return Math.max(0, way === 'slower' ? difference : -difference);
}

function unitOf(system: UnitSystem): 'm/min' | 'ft/min' {
  return system === 'metric' ? 'm/min' : 'ft/min';
}

import { fromDive, fromSetting, newChain, quantity } from '../chain';
import { gradientFactor } from '../steps/limit-steps';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import type { UnitInstant } from './unit-instant';
import type { Named, Working } from '../working';

/** Why a unit goes by a lower high gradient factor after a fast rise. */
export function tightenedWorking({ watch, sample }: UnitInstant): Working {
  const { tracks, rules, drawnIn, dives } = watch;
  const { by, floor, mostTimes } = rules.tighterLimits;
  const times = tracks.tightness[sample]!;
  const high = quantity(drawnIn[times]!.limits.gradientFactors.high, '');
  const begun = tracks.divesBegun[sample]!;
  const now = tracks.breaches[sample]!;
  const before = tracks.divesKnown[sample]! > 1 ? dives[begun - 2]!.breaches : 0;
  const chain = newChain();
  const count = (symbol: string, value: number, meaning: string): Named =>
    fromDive(symbol, { ...quantity(value, ''), meaning });
  const counted =
    Math.min(before + now, mostTimes) === times
      ? chain.add({
          id: 'step:times',
          title: 'how many times the limits are drawn in',
          why: 'Each breach of the rate limit on this dive and the one before counts once, up to a most.',
          expression: 'min(n_before + n_now, n_most)',
          symbol: 'n',
          values: [
            count('n_before', before, 'breaches on the dive before'),
            count('n_now', now, 'breaches on this dive so far'),
            fromSetting('n_most', {
              ...quantity(mostTimes, ''),
              meaning: 'breaches beyond so many change nothing more',
              within: [1, 9],
            }),
          ],
          result: quantity(times, ''),
          source: SOURCES.penalty,
        })
      : count('n', times, 'how many times the limits are drawn in');
  chain.add({
    id: 'step:tightened',
    title: 'high gradient factor the unit goes by',
    why: 'Each time takes so much off, though never below a floor.',
    expression: 'min(gf_high, max(gf_floor, gf_high - gf_by * n))',
    symbol: 'gf_now',
    values: [
      gradientFactor('gf_high', drawnIn[0]!.limits.gradientFactors.high, 'high'),
      fromSetting('gf_floor', { ...quantity(floor, ''), meaning: 'it is not taken lower than this', within: [0.1, 1] }),
      fromSetting('gf_by', { ...quantity(by, ''), meaning: 'what each breach takes off', within: [0.01, 0.5] }),
      counted,
    ],
    result: high,
    source: SOURCES.penalty,
  });
  return {
    reading: 'tightened-limits',
    title: 'Limits drawn in',
    answer: {
      ...high,
      text: 'After a fast rise the unit keeps you further from the model’s limit, for the rest of the dive and the next.',
    },
    steps: chain.steps,
    cautions: [REMARKS.rule],
  };
}

import { legsOf } from '../../dive/legs';
import { averagedDepths } from '../../rules/averaged-rate';
import { believedDive } from '../../rules/unit/believed-dive';
import { rateLimitAt } from '../../rules/settings/rate-limits';
import { levelsFrom, RATE_LEVELS, RATE_ROUNDING } from '../../rules/rate-watch';
import { fromDive, fromSetting, newChain, quantity } from '../chain';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import type { UnitInstant } from './unit-instant';
import type { Working } from '../working';

/** Why a unit shows the speed it shows: how much less deep than some seconds before. */
export function rateWorking({ watch, sample }: UnitInstant): Working {
  const { timeline, tracks, rules, dive, setup } = watch;
  const { averageS, limit } = rules.rateWatch;
  const { depthFactor } = believedDive(dive, setup);
  const { thenM, nowM } = averagedDepths(timeline, legsOf(dive).legs, averageS, sample);
  const [brisk, tooFast, far] = levelsFrom(rateLimitAt(limit, timeline.depthM[sample]!), rules.rateWatch);
  const rate = quantity(tracks.rateMMin[sample]!, 'm/min');
  const chain = newChain();
  const speed = chain.add({
    id: 'step:speed',
    title: 'how fast you rise, averaged',
    why: 'How much less deep you are than a few seconds ago, told as if it went on for a minute. Less than nothing means that you go down.',
    expression: `(d_then - d_now) / t_avg * s_min${depthFactor === 1 ? '' : ' * f_gauge'}`,
    symbol: 'v',
    values: [
      fromDive('d_then', { ...quantity(thenM, 'm'), meaning: 'depth when the average begins' }),
      fromDive('d_now', { ...quantity(nowM, 'm'), meaning: 'depth now' }),
      fromSetting('t_avg', { ...quantity(averageS, 's'), meaning: 'time the speed is averaged over', within: [1, 30] }),
      fromSetting('s_min', { ...quantity(60, ''), meaning: 'seconds in a minute' }),
      ...(depthFactor === 1
        ? []
        : [
            fromSetting('f_gauge', {
              ...quantity(depthFactor, ''),
              meaning: 'what a change of depth reads as on this unit',
              within: [0.5, 2],
            }),
          ]),
    ],
    result: rate,
    source: SOURCES.rateWatch,
  });
  const level = tracks.rateLevel[sample]!;
  return {
    reading: 'rate',
    title: 'Rate',
    answer: {
      value: speed.value.value,
      unit: speed.value.unit,
      text:
        rate.value > tooFast * (1 + RATE_ROUNDING)
          ? 'This is faster than the limit the unit goes by here.'
          : 'This is within the limit the unit goes by here.',
    },
    steps: chain.steps,
    table: {
      caption: 'What the unit calls a speed at this depth',
      columns: [
        { title: 'level', unit: '' },
        { title: 'from', unit: 'm/min' },
      ],
      rows: [0, brisk, tooFast, far].map((from, index) => [RATE_LEVELS[index]!, from]),
      marked: level,
    },
    cautions: [REMARKS.held, REMARKS.rule],
  };
}

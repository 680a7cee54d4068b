import { SAME_DEPTH_M } from '../../ascent/ceiling';
import { fromDive, quantity, type Chain } from '../chain';
import { scheduleNow } from '../model/required-wait';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import { timeToSurfaceWorking } from '../model/time-to-surface-working';
import { modelInstant, type UnitInstant } from './unit-instant';
import type { Working } from '../working';

/** The time to surface of a unit: the model's, and on top of it what a rule's own stop adds. */
export function unitTimeToSurfaceWorking(unit: UnitInstant): Working {
  const { watch, sample } = unit;
  const model = timeToSurfaceWorking(modelInstant(unit));
  const imposedM = watch.tracks.imposedStopM[sample]!;
  if (imposedM === 0) return model;
  const schedule = scheduleNow(modelInstant(unit));
  const togetherMin = schedule.stops.find(({ depthM }) => Math.abs(depthM - imposedM) < SAME_DEPTH_M)?.minutes ?? 0;
  const imposedMin = watch.tracks.imposedStopLeftS[sample]! / 60;
  const last = model.steps.at(-1)!;
  const step: Chain['steps'][number] = {
    id: 'step:with-imposed',
    title: 'time to surface with the imposed stop',
    why: 'A stop of the model’s at the same depth is made together with it; elsewhere it comes on top.',
    expression: `${last.symbol} + max(0, t_imposed - t_together)`,
    symbol: 't_unit',
    values: {
      [last.symbol]: { ...last.result, meaning: last.title, from: last.id, changeable: false },
      t_imposed: fromDive('t_imposed', {
        ...quantity(imposedMin, 'min'),
        meaning: 'what is left of the imposed stop',
      }).value,
      t_together: fromDive('t_together', {
        ...quantity(togetherMin, 'min'),
        meaning: 'the model’s own stop at that depth',
      }).value,
    },
    result: quantity(last.result.value + Math.max(0, imposedMin - togetherMin), 'min'),
    source: SOURCES.penalty,
  };
  return {
    ...model,
    answer: { ...model.answer, value: step.result.value },
    steps: [...model.steps, step],
    cautions: [...(model.cautions ?? []), REMARKS.rule],
  };
}

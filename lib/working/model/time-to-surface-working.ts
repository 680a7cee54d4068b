import { gasName } from '../../physics/gas';
import type { Schedule } from '../../ascent/plan/schedule';
import { fromSearch, fromSetting, newChain, quantity, type Chain } from '../chain';
import type { Instant } from '../instant';
import { scheduleNow } from './required-wait';
import { SOURCES } from '../sources';
import type { Named, Working, WorkingTable } from '../working';

/** So many stops are added up in one step. */
const STOPS_A_STEP = 10;

/** Why the way to the surface takes as long as it does: the climbing, and each stop. */
export function timeToSurfaceWorking(instant: Instant): Working {
  const { plan } = instant.figures.limits;
  const schedule = scheduleNow(instant);
  const climbedM = schedule.parts.reduce((sum, { fromM, toM }) => sum + Math.abs(fromM - toM), 0);
  const chain = newChain();
  const climb = chain.add({
    id: 'step:climb',
    title: 'time spent changing depth',
    why: 'All of the climbing goes at the plan’s ascent rate.',
    expression: 'd_climb / v',
    symbol: 't_climb',
    values: [
      fromSearch('d_climb', {
        ...quantity(climbedM, 'm'),
        meaning: 'depth to climb in all, with any way back down to a stop',
      }),
      fromSetting('v', { ...quantity(plan.ascentMMin, 'm/min'), meaning: 'ascent rate of the plan', within: [1, 60] }),
    ],
    result: quantity(climbedM / plan.ascentMMin, 'min'),
    source: SOURCES.arithmetic,
  });
  const stops = stopSteps(chain, schedule);
  chain.add({
    id: 'step:time-to-surface',
    title: 'time to surface',
    why: stops ? 'Climbing and stops together.' : 'There is no stop to make, so the climbing is all.',
    expression: stops ? `t_climb + ${stops.symbol}` : 't_climb',
    symbol: 't_surface',
    values: stops ? [climb, stops] : [climb],
    result: quantity(schedule.timeToSurfaceMin, 'min'),
    source: SOURCES.arithmetic,
  });
  return {
    reading: 'time-to-surface',
    title: 'Time to surface',
    answer: {
      ...quantity(schedule.timeToSurfaceMin, 'min'),
      text:
        schedule.timeToSurfaceMin === Infinity
          ? 'On the gases carried, one of the stops would never end: the compartments go on taking gas up there.'
          : 'The whole way up, at the plan’s ascent rate, with every stop the model asks for.',
    },
    steps: chain.steps,
    table: partTable(schedule),
  };
}

/** Adds the stops up, some at a time. */
function stopSteps(chain: Chain, { stops, parts, timeToSurfaceMin }: Schedule): Named | undefined {
  const endless = timeToSurfaceMin === Infinity ? [{ depthM: parts.at(-1)?.toM, minutes: Infinity }] : [];
  const waits = [...stops, ...endless].map(({ depthM, minutes }, index) =>
    fromSearch(`t_stop_${index + 1}`, {
      ...quantity(minutes, 'min'),
      meaning: 'how long this stop lasts, as the required stop is worked out',
      ...(depthM === undefined ? {} : { at: quantity(depthM, 'm') }),
    }),
  );
  let sum: Named | undefined;
  for (let from = 0; from < waits.length; from += STOPS_A_STEP) {
    const terms: Named[] = [...(sum ? [sum] : []), ...waits.slice(from, from + STOPS_A_STEP)];
    const last = from + STOPS_A_STEP >= waits.length;
    sum = chain.add({
      id: last ? 'step:stops' : `step:stops-${from + STOPS_A_STEP}`,
      title: last ? 'time spent at stops' : 'time spent at the deeper stops',
      why: 'The stops one after another, deepest first.',
      expression: terms.map(({ symbol }) => symbol).join(' + '),
      symbol: last ? 't_stops' : `t_stops_${from + STOPS_A_STEP}`,
      values: terms,
      result: quantity(
        terms.reduce((total, { value }) => total + value.value, 0),
        'min',
      ),
      source: SOURCES.arithmetic,
    });
  }
  return sum;
}

function partTable({ parts }: Schedule): WorkingTable {
  return {
    caption: 'The way up, piece by piece',
    columns: [
      { title: 'gas breathed', unit: '' },
      { title: 'from', unit: 'm' },
      { title: 'to', unit: 'm' },
      { title: 'time', unit: 'min' },
    ],
    rows: parts.map(({ gas, fromM, toM, minutes }) => [gasName(gas), fromM, toM, minutes]),
  };
}

import { inertBarOf } from '../../ascent/ceiling';
import { loadAt } from '../../ascent/figures';
import { DESATURATED_BAR, desaturation, desaturationOf } from '../../rules/surface/desaturation';
import { LONGEST_WAIT_MIN, restingAt, surfaceNitrogenBar } from '../../rules/surface/surface-interval';
import { fromSetting, newChain, quantity } from '../chain';
import { inertStep } from '../steps/compartment-steps';
import { siteSteps } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { restedSteps, restingStep, soughtWait } from '../steps/resting-steps';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import { tensionSteps } from '../steps/tension-steps';
import { modelInstant, type UnitInstant } from './unit-instant';
import { withinAWeek } from '../steps/week-steps';
import type { Search, Working } from '../working';
import { ALL_COMPARTMENTS } from '../../tissue/coefficients';

/** Why it takes so long until no compartment holds more than at rest. */
export function desaturationWorking(unit: UnitInstant): Working {
  const instant = modelInstant(unit);
  const { timeline, sample } = instant;
  const resting = restingAt(timeline, sample);
  const { minutes, leader } = desaturation(timeline, sample);
  const compartment = (leader || fullest(unit)) - 1;
  const load = loadAt(timeline, sample);
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const held = tensionSteps(chain, site, instant, compartment);
  const rest = restingStep(chain, site, instant);
  const edge = fromSetting('x_edge', {
    ...quantity(DESATURATED_BAR, 'bar'),
    meaning: 'more than at rest that still counts as none',
  });
  let search: Search | undefined;
  if (held.helium) {
    const wait = soughtWait(minutes, LONGEST_WAIT_MIN);
    const total = inertStep(chain, restedSteps(chain, held, rest, wait), {
      id: 'step:rested',
      symbol: 'P_later',
      title: 'both gases in this compartment at that time',
    });
    chain.add({
      id: 'step:meeting',
      title: 'room left below the edge at that time',
      why: 'The time sought is the first at which this is nothing or more.',
      expression: 'P_rest + x_edge - P_later',
      symbol: 'x_later',
      values: [rest, edge, total],
      result: quantity(rest.value.value + DESATURATED_BAR - total.value.value, 'bar'),
      source: SOURCES.arithmetic,
    });
    search = { symbol: 't', until: 'step:meeting', fromMin: 0, horizonMin: LONGEST_WAIT_MIN, stepMin: 15 };
    withinAWeek(chain, wait, { id: 'desaturated', symbol: 't_desat', title: 'time until desaturated', minutes });
  } else {
    const first = chain.add({
      id: 'step:first',
      title: 'when this compartment holds no more than at rest, to the edge',
      why: 'Haldane’s solution turned round.',
      expression: 'P_N2 - P_rest > x_edge ? log((P_N2 - P_rest) / x_edge) / k_N2 : 0',
      symbol: 't_first',
      values: [held.nitrogen, rest, edge, held.nitrogenK],
      result: quantity(firstMin(held.nitrogen.value.value - rest.value.value, held.nitrogenK.value.value), 'min'),
      source: SOURCES.desaturated,
    });
    withinAWeek(chain, first, {
      id: 'desaturated',
      symbol: 't_desat',
      title: 'time until desaturated',
      minutes: first.value.value,
    });
  }
  const { result } = chain.steps.at(-1)!;
  return {
    reading: 'desaturation',
    title: 'Desaturated in',
    ...(leader > 0 ? { compartment: leader } : {}),
    answer: {
      ...result,
      text:
        leader === 0
          ? 'No compartment holds more than at rest.'
          : 'This compartment is the last to be rid of what the dives have left in it.',
    },
    steps: chain.steps,
    table: sixteenTable(
      timeline,
      'How long each compartment holds more than at rest',
      [
        { title: 'tension now', unit: 'bar', of: (c) => inertBarOf(load, c) },
        { title: 'more than at rest', unit: 'bar', of: (c) => inertBarOf(load, c) - surfaceNitrogenBar(timeline) },
        { title: 'wait', unit: 'min', of: (c) => desaturationOf([resting[c]!]).minutes },
      ],
      compartment,
    ),
    ...(search ? { search } : {}),
    cautions: [...(held.legsLeftOut > 0 ? [REMARKS.earlierLegs] : []), REMARKS.noWait],
  };
}

function firstMin(excessBar: number, k: number): number {
  return excessBar > DESATURATED_BAR ? Math.log(excessBar / DESATURATED_BAR) / k : 0;
}

/** The compartment (1–16) that holds most. */
function fullest(unit: UnitInstant): number {
  const load = loadAt(unit.watch.timeline, unit.sample);
  const held = ALL_COMPARTMENTS.map((c) => inertBarOf(load, c));
  return held.indexOf(Math.max(...held)) + 1;
}

import { coefficientsOf, inertBarOf } from '../../ascent/ceiling';
import { loadAt } from '../../ascent/figures';
import { supersaturation, supersaturationOf } from '../../ascent/supersaturation';
import { mValueBar } from '../../tissue/limit';
import { deciding, newChain, quantity } from '../chain';
import { coefficientSteps, inertStep } from '../steps/compartment-steps';
import type { Instant } from '../instant';
import { ambientStep, siteSteps } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import { tensionSteps } from '../steps/tension-steps';
import type { Working } from '../working';

/** Why the supersaturation at this depth is what it is. */
export function supersaturationWorking(instant: Instant): Working {
  return workedAt(instant, 'now');
}

/** The same as if the diver surfaced this instant. */
export function surfacingSupersaturationWorking(instant: Instant): Working {
  return workedAt(instant, 'surfacing');
}

function workedAt(instant: Instant, where: 'now' | 'surfacing'): Working {
  const { timeline, sample } = instant;
  const load = loadAt(timeline, sample);
  const pressureBar = where === 'now' ? timeline.ambientBar[sample]! : timeline.surfaceBar;
  const { value, leader } = supersaturation(load, pressureBar);
  const compartment = leader - 1;
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const pressure = where === 'now' ? ambientStep(chain, site, instant) : site.surface;
  const held = tensionSteps(chain, site, instant, compartment);
  const { a, b } = coefficientSteps(chain, timeline, compartment, held);
  const tension = inertStep(chain, held, {
    id: 'step:inert',
    symbol: 'P_inert',
    title: 'both gases in this compartment now',
  });
  const limit = chain.add({
    id: 'step:limit',
    title: where === 'now' ? 'the model’s own limit at this pressure' : 'the model’s own limit at the surface',
    why: 'The published limit, with no gradient factor.',
    expression: `${a.symbol} + ${pressure.symbol} / ${b.symbol}`,
    symbol: 'M',
    values: [a, pressure, b],
    result: quantity(mValueBar(a.value.value, b.value.value, pressureBar), 'bar'),
    source: SOURCES.limits,
  });
  chain.add({
    id: 'step:supersaturation',
    title: 'supersaturation',
    why: 'How much of the way from the pressure around you to the limit the tension has gone; less than nothing while it is below that pressure.',
    expression: `(${tension.symbol} - ${pressure.symbol}) / (M - ${pressure.symbol})`,
    symbol: 'S',
    values: [tension, pressure, limit],
    result: quantity(value, ''),
    source: SOURCES.gradientFactors,
  });
  return {
    reading: where === 'now' ? 'supersaturation' : 'surfacing-supersaturation',
    title: where === 'now' ? 'Supersaturation now' : 'Supersaturation if you surfaced this instant',
    compartment: leader,
    answer: {
      ...quantity(value, ''),
      text: 'The largest of the sixteen: nothing at balance with the pressure around, one at the model’s own limit.',
    },
    deciding: deciding(chain, [tension, 'held'], [limit, 'the model’s limit']),
    steps: chain.steps,
    table: sixteenTable(
      timeline,
      where === 'now'
        ? 'Each compartment against its own limit at this depth'
        : 'Each compartment against its own limit at the surface',
      [
        { title: 'tension now', unit: 'bar', of: (c) => inertBarOf(load, c) },
        {
          title: 'limit',
          unit: 'bar',
          of: (c) => mValueBar(coefficientsOf(load, c).a, coefficientsOf(load, c).b, pressureBar),
        },
        { title: 'supersaturation', unit: '', of: (c) => supersaturationOf(load, c, pressureBar) },
      ],
      compartment,
    ),
    cautions: [...(held.legsLeftOut > 0 ? [REMARKS.earlierLegs] : [])],
  };
}

import { gasAt } from '../../dive/timeline';
import { partialPressures } from '../../exposure/gas-depths';
import { nitrogenFraction } from '../../physics/gas';
import { deciding, fromDive, newChain, quantity } from '../chain';
import type { Instant } from '../instant';
import { ambientStep, FRACTION_RANGE, siteSteps } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Working } from '../working';

/** Why the oxygen breathed has the pressure it has; the other gases beside it. */
export function oxygenPressureWorking(instant: Instant): Working {
  const { timeline, sample } = instant;
  const gas = gasAt(timeline, sample);
  const { oxygenBar, nitrogenBar, heliumBar } = partialPressures(gas, timeline.ambientBar[sample]!);
  const chain = newChain();
  const ambient = ambientStep(chain, siteSteps(chain, timeline), instant);
  const pressure = quantity(oxygenBar, 'bar');
  chain.add({
    id: 'step:oxygen',
    title: 'oxygen pressure',
    why: 'Each gas of a mixture has its share of the pressure. The limits for oxygen are told for the gas as you breathe it in, dry.',
    expression: 'p_amb * F_O2',
    symbol: 'p_O2',
    values: [
      ambient,
      fromDive('F_O2', { ...quantity(gas.o2, ''), meaning: 'fraction of oxygen you breathe', within: FRACTION_RANGE }),
    ],
    result: pressure,
    source: SOURCES.dalton,
  });
  return {
    reading: 'oxygen-pressure',
    title: 'Oxygen pressure',
    answer: { ...pressure, text: 'The share of oxygen in the pressure of what you breathe.' },
    deciding: deciding(chain, [ambient, 'around you']),
    steps: chain.steps,
    table: {
      caption: 'What each gas of the mixture adds',
      columns: [
        { title: 'gas', unit: '' },
        { title: 'fraction', unit: '' },
        { title: 'pressure', unit: 'bar' },
      ],
      rows: [
        ['oxygen', gas.o2, oxygenBar],
        ['nitrogen', nitrogenFraction(gas), nitrogenBar],
        ['helium', gas.he, heliumBar],
      ],
      marked: 0,
    },
  };
}

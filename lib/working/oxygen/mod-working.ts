import { WORKING_PO2_BAR } from '../../physics/oxygen-limits';
import { gasAt } from '../../dive/timeline';
import { gasModM } from '../../exposure/gas-depths';
import { deciding, fromDive, fromPractice, newChain, quantity } from '../chain';
import type { Instant } from '../instant';
import { FRACTION_RANGE, siteSteps } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Working } from '../working';

/** Why the gas breathed has the maximum operating depth it has, at an oxygen limit in bar. */
export function modWorking({ timeline, sample }: Instant, limitBar = WORKING_PO2_BAR): Working {
  const gas = gasAt(timeline, sample);
  const { o2 } = gas;
  const depth = quantity(gasModM(gas, limitBar, timeline), 'm');
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const pressure = chain.add({
    id: 'step:limit-ambient',
    title: 'pressure around you at which oxygen reaches its limit',
    why: 'Oxygen has its share of the pressure, so the pressure is the limit divided by the share; a gas without oxygen never reaches it.',
    expression: 'F_O2 > 0 ? p_O2_limit / F_O2 : Infinity',
    symbol: 'p_limit',
    values: [
      fromDive('F_O2', { ...quantity(o2, ''), meaning: 'fraction of oxygen you breathe', within: FRACTION_RANGE }),
      fromPractice('p_O2_limit', {
        ...quantity(limitBar, 'bar'),
        meaning: 'limit of oxygen pressure, as commonly taught for a working dive',
        within: [0.5, 2],
      }),
    ],
    result: quantity(o2 > 0 ? limitBar / o2 : Infinity, 'bar'),
    source: SOURCES.dalton,
  });
  chain.add({
    id: 'step:mod',
    title: 'maximum operating depth',
    why: 'The depth at which the water and the air give that pressure.',
    expression: '(p_limit - p_surface) / w',
    symbol: 'd_MOD',
    values: [pressure, site.surface, site.water],
    result: depth,
    source: SOURCES.water,
  });
  return {
    reading: 'mod',
    title: 'Maximum operating depth',
    answer: { ...depth, text: answerText(depth.value) },
    deciding: deciding(chain, [pressure, 'around you at the limit']),
    steps: chain.steps,
  };
}

function answerText(depthM: number): string {
  if (depthM === Infinity)
    return 'There is no oxygen in this gas: it has no greatest depth for oxygen, and cannot be breathed at any.';
  if (depthM < 0) return 'This gas is past the limit even at the surface.';
  return 'Deeper than this, the oxygen in this gas is past the limit chosen.';
}

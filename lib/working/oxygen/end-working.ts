import { gasAt } from '../../dive/timeline';
import { equivalentNarcoticDepthM, narcoticFraction, type Narcotic } from '../../exposure/gas-depths';
import { AIR } from '../../physics/gas';
import { deciding, fromDive, fromPublished, newChain, quantity } from '../chain';
import type { Instant } from '../instant';
import { ambientStep, FRACTION_RANGE, siteSteps } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Working } from '../working';

/** Why the gas breathed has the equivalent narcotic depth it has: where air is as narcotic. */
export function endWorking(instant: Instant, counted: Narcotic = 'nitrogen and oxygen'): Working {
  const { timeline, sample } = instant;
  const gas = gasAt(timeline, sample);
  const fraction = narcoticFraction(gas, counted);
  const ofAir = narcoticFraction(AIR, counted);
  const narcoticBar = timeline.ambientBar[sample]! * fraction;
  const depth = quantity(equivalentNarcoticDepthM(gas, timeline.depthM[sample]!, counted, timeline), 'm');
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const ambient = ambientStep(chain, site, instant);
  const narcotic = chain.add({
    id: 'step:narcotic',
    title: 'pressure of the narcotic gas you breathe',
    why:
      counted === 'nitrogen'
        ? 'Nitrogen is counted as narcotic; helium and oxygen are not.'
        : 'Nitrogen and oxygen are counted as narcotic; helium is not.',
    expression: 'p_amb * F_narc',
    symbol: 'p_narc',
    values: [
      ambient,
      fromDive('F_narc', {
        ...quantity(fraction, ''),
        meaning: 'fraction of narcotic gas you breathe',
        within: FRACTION_RANGE,
      }),
    ],
    result: quantity(narcoticBar, 'bar'),
    source: SOURCES.dalton,
  });
  chain.add({
    id: 'step:end',
    title: 'equivalent narcotic depth',
    why: 'The depth at which air has as much narcotic gas; less than nothing means that air at the surface has more.',
    expression: '(p_narc / F_narc_air - p_surface) / w',
    symbol: 'd_END',
    values: [
      narcotic,
      fromPublished('F_narc_air', { ...quantity(ofAir, ''), meaning: 'fraction of narcotic gas in air' }),
      site.surface,
      site.water,
    ],
    result: depth,
    source: SOURCES.narcosis,
  });
  return {
    reading: counted === 'nitrogen' ? 'end-nitrogen' : 'end',
    title: 'Equivalent narcotic depth',
    answer: { ...depth, text: 'On air you would breathe as much narcotic gas at this depth.' },
    deciding: deciding(chain, [ambient, 'around you'], [narcotic, 'of it narcotic']),
    steps: chain.steps,
    cautions: ['Authorities differ on whether oxygen counts as narcotic, and people differ in how much they feel.'],
  };
}

import { LONGEST_S } from '../../dive/bounds';
import type { Timeline } from '../../dive/timeline';
import { atmosphereBar } from '../../physics/atmosphere';
import { AIR, nitrogenFraction } from '../../physics/gas';
import { alveolarInertBar } from '../../tissue/alveolar';
import { haldane } from '../../tissue/loading';
import { fromDive, fromPublished, fromSetting, quantity, type Chain } from '../chain';
import { homeAtmosphere, lungTerm, type InertGas, type Site } from './pressure-steps';
import { SOURCES } from '../sources';
import type { Named, SymbolName } from '../working';

const TENSION_RANGE_BAR = [0, 40] as const;

interface StartGiven {
  readonly compartment: number;
  readonly of: InertGas;
  readonly k: Named;
  readonly symbol: SymbolName;
}

/** A tension taken as the legs before those worked through left it. */
export function leftByEarlierLegs(symbol: SymbolName, tensionBar: number): Named {
  return fromDive(symbol, {
    ...quantity(tensionBar, 'bar'),
    meaning: 'tension left by the legs before',
  });
}

/** The tension a dive begins with: settled at an altitude, on the way to settling at the site, or carried over. */
export function startSteps(
  chain: Chain,
  site: Site,
  timeline: Timeline,
  { compartment, of, k, symbol }: StartGiven,
): Named {
  const { start, altitudeM } = timeline.conditions;
  if (start.kind === 'tensions') {
    const bar = (of === 'N2' ? start.nitrogenBar : start.heliumBar)[compartment]!;
    return fromSetting(symbol, {
      ...quantity(bar, 'bar'),
      meaning: 'tension left by an earlier dive',
      within: TENSION_RANGE_BAR,
    });
  }
  if (of === 'He') return fromSetting(symbol, { ...quantity(0, 'bar'), meaning: 'no helium at the start' });
  const homeM = start.kind === 'adapted' ? start.altitudeM : start.fromM;
  const home = homeM === altitudeM ? site.surface : homeAtmosphere(chain, homeM);
  const quotient = timeline.conditions.model.respiratoryQuotient;
  const air = fromPublished('F_air', {
    ...quantity(nitrogenFraction(AIR), ''),
    meaning: 'fraction of nitrogen in air',
  });
  const lungs = lungTerm(timeline);
  const settledBar = alveolarInertBar(atmosphereBar(homeM), nitrogenFraction(AIR), quotient);
  const travelled = start.kind === 'arrived';
  const settled = chain.add({
    id: 'step:settled',
    title: 'nitrogen in every compartment where you had settled',
    why: 'After days at one pressure every compartment holds as much nitrogen as the air in the lungs.',
    expression: `(${home.symbol} ${lungs.expression}) * F_air`,
    symbol: travelled ? 'P_N2_home' : symbol,
    values: [home, ...lungs.values, air],
    result: quantity(settledBar, 'bar'),
    source: SOURCES.lungs,
    group: 'history',
  });
  if (!travelled) return settled;
  const here = chain.add({
    id: 'step:air-here',
    title: 'nitrogen pressure in your lungs at the surface here',
    why: 'Since you arrived you have breathed the thinner or thicker air of the site.',
    expression: `(p_surface ${lungs.expression}) * F_air`,
    symbol: 'P_alv_here',
    values: [site.surface, ...lungs.values, air],
    result: quantity(alveolarInertBar(timeline.surfaceBar, nitrogenFraction(AIR), quotient), 'bar'),
    source: SOURCES.lungs,
    group: 'history',
  });
  const minutes = start.agoS / 60;
  return chain.add({
    id: 'step:arrived',
    title: 'nitrogen in this compartment when the dive begins',
    why: 'At one pressure the gap to the lungs shrinks by half in every half-time (Haldane).',
    expression: `P_alv_here + (P_N2_home - P_alv_here) * exp(-${k.symbol} * t_ago)`,
    symbol,
    values: [
      here,
      settled,
      k,
      fromSetting('t_ago', {
        ...quantity(minutes, 'min'),
        meaning: 'time since you arrived',
        within: [0, LONGEST_S / 60],
      }),
    ],
    result: quantity(haldane(settledBar, here.value.value, k.value.value, minutes), 'bar'),
    source: SOURCES.loading,
    group: 'history',
  });
}

import { DEEPEST_M } from '../../dive/bounds';
import { gasAt, type Timeline } from '../../dive/timeline';
import { ALTITUDE_RANGE_M, atmosphereBar, SEA_LEVEL_BAR } from '../../physics/atmosphere';
import { nitrogenFraction, type Gas } from '../../physics/gas';
import type { Water } from '../../physics/water';
import { ALVEOLAR_CO2_BAR, WATER_VAPOUR_BAR } from '../../tissue/alveolar';
import { fromDive, fromPublished, fromSetting, quantity, type Chain } from '../chain';
import type { Instant } from '../instant';
import { SOURCES } from '../sources';
import type { Named, StepId } from '../working';

/** The site as a working names it. */
export interface Site {
  readonly surface: Named;
  readonly water: Named;
}

export const DEPTH_RANGE_M = [0, DEEPEST_M] as const;
export const FRACTION_RANGE = [0, 1] as const;

const WATER_MEANINGS: Readonly<Record<Water, string>> = {
  reference: 'pressure added per unit of depth, by the depth gauge’s convention',
  fresh: 'pressure added per unit of depth in fresh water',
  salt: 'pressure added per unit of depth in salt water',
};

/** Pressure at the surface, worked out from the altitude unless that is sea level, and the weight of the water. */
export function siteSteps(chain: Chain, { conditions, surfaceBar, barPerMetre }: Timeline): Site {
  const { altitudeM, water } = conditions;
  return {
    surface: atmosphereStep(chain, altitudeM, surfaceBar, {
      id: 'step:surface',
      symbol: 'p_surface',
      height: 'h',
      title: 'pressure at the surface',
    }),
    water: fromSetting('w', { ...quantity(barPerMetre, 'bar/m'), meaning: WATER_MEANINGS[water] }),
  };
}

interface AtmosphereNames {
  readonly id: StepId;
  readonly symbol: string;
  /** Symbol of the altitude. */
  readonly height: string;
  readonly title: string;
  readonly group?: 'history';
}

/** The standard atmosphere at an altitude. At sea level it is a published figure and needs no step. */
export function atmosphereStep(
  chain: Chain,
  altitudeM: number,
  resultBar: number,
  { height, ...names }: AtmosphereNames,
): Named {
  if (altitudeM === 0) {
    return fromPublished(names.symbol, {
      ...quantity(resultBar, 'bar'),
      meaning: `${names.title}, at sea level`,
    });
  }
  return chain.add({
    ...names,
    why: 'The air above weighs less the higher you are.',
    expression: `p_sea * (1 - ${height} / h_std) ^ n`,
    values: [
      fromPublished('p_sea', { ...quantity(SEA_LEVEL_BAR, 'bar'), meaning: 'standard atmosphere at sea level' }),
      fromSetting(height, { ...quantity(altitudeM, 'm'), meaning: 'altitude', within: ALTITUDE_RANGE_M }),
      fromPublished('h_std', { ...quantity(44330.8, 'm'), meaning: 'height in the standard atmosphere’s formula' }),
      fromPublished('n', { ...quantity(5.255876, ''), meaning: 'exponent of the standard atmosphere’s formula' }),
    ],
    result: quantity(resultBar, 'bar'),
    source: SOURCES.atmosphere,
  });
}

/** The diver's depth, as it was. */
export function depthNow({ timeline, sample }: Instant): Named {
  return fromDive('d', {
    ...quantity(timeline.depthM[sample]!, 'm'),
    meaning: 'your depth now',
    within: DEPTH_RANGE_M,
  });
}

/** Ambient pressure at the diver's depth. */
export function ambientStep(chain: Chain, site: Site, instant: Instant): Named {
  const { timeline, sample } = instant;
  return chain.add({
    id: 'step:ambient',
    title: 'pressure around you',
    why: 'The air above the water and the water above you both press on you.',
    expression: 'p_surface + w * d',
    symbol: 'p_amb',
    values: [site.surface, site.water, depthNow(instant)],
    result: quantity(timeline.ambientBar[sample]!, 'bar'),
    source: SOURCES.water,
  });
}

export type InertGas = 'N2' | 'He';
export const GAS_NAMES = { N2: 'nitrogen', He: 'helium' } as const;

/** The fraction of one inert gas in a breathing gas, 0 to 1. */
export function inertFraction(gas: Gas, of: InertGas): number {
  return of === 'N2' ? nitrogenFraction(gas) : gas.he;
}

/** What the lungs take off the ambient pressure, as a piece of an expression with its values. */
export function lungTerm({ conditions }: Timeline): { readonly expression: string; readonly values: readonly Named[] } {
  const vapour = fromPublished('p_H2O', { ...quantity(WATER_VAPOUR_BAR, 'bar'), meaning: 'water vapour in the lungs' });
  const quotient = conditions.model.respiratoryQuotient;
  if (quotient === 1) return { expression: '- p_H2O', values: [vapour] };
  return {
    expression: '- p_H2O + (1 - RQ) / RQ * p_CO2',
    values: [
      vapour,
      fromSetting('RQ', { ...quantity(quotient, ''), meaning: 'respiratory quotient', within: [0.6, 1.2] }),
      fromPublished('p_CO2', { ...quantity(ALVEOLAR_CO2_BAR, 'bar'), meaning: 'carbon dioxide in the lungs' }),
    ],
  };
}

/** Pressure of one inert gas in the lungs now. */
export function breathedStep(chain: Chain, ambient: Named, of: InertGas, { timeline, sample }: Instant): Named {
  const lungs = lungTerm(timeline);
  const fraction = inertFraction(gasAt(timeline, sample), of);
  return chain.add({
    id: `step:breathed-${of}`,
    title: `${GAS_NAMES[of]} pressure in your lungs`,
    why: `Water vapour fills part of the lungs; ${GAS_NAMES[of]} has its share of the rest. Every compartment heads for this pressure.`,
    expression: `(${ambient.symbol} ${lungs.expression}) * F_${of}`,
    symbol: `P_alv_${of}`,
    values: [
      ambient,
      ...lungs.values,
      fromDive(`F_${of}`, {
        ...quantity(fraction, ''),
        meaning: `fraction of ${GAS_NAMES[of]} you breathe`,
        within: FRACTION_RANGE,
      }),
    ],
    result: quantity((timeline.ambientBar[sample]! - timeline.lungOffsetBar) * fraction, 'bar'),
    source: SOURCES.lungs,
  });
}

/** The atmosphere a diver settled in before the dive, when it is not the site's own. */
export function homeAtmosphere(chain: Chain, altitudeM: number): Named {
  return atmosphereStep(chain, altitudeM, atmosphereBar(altitudeM), {
    id: 'step:home',
    symbol: 'p_home',
    height: 'h_home',
    title: 'pressure where you had settled',
    group: 'history',
  });
}

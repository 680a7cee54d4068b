import type { Limits } from '../../ascent/limits';
import type { Timeline } from '../../dive/timeline';
import { fromSetting, quantity, type Chain } from '../chain';
import type { Inert } from '../steps/compartment-steps';
import { legSteps, tensionAfterLeg, type WorkingLeg } from '../steps/leg-steps';
import { gradientFactor } from '../steps/limit-steps';
import type { InertGas, Site } from '../steps/pressure-steps';
import type { RequiredWait } from './required-wait';
import { SOURCES } from '../sources';
import type { Tension } from '../steps/tension-steps';
import type { Named } from '../working';

/** Takes what a compartment holds along the legs of a way up. */
export function alongLegs(
  chain: Chain,
  timeline: Timeline,
  site: Site,
  held: Tension,
  legs: readonly WorkingLeg[],
): Inert {
  const along = (of: InertGas, now: Named, k: Named) =>
    legs.reduce((before, leg) => {
      const bar = tensionAfterLeg(timeline, k.value.value, of, before.value.value, leg);
      return legSteps(chain, { timeline, site, of, k }, leg, before, `P_${of}_${leg.name}`, bar);
    }, now);
  const nitrogen = along('N2', held.nitrogen, held.nitrogenK);
  return held.helium ? { nitrogen, helium: along('He', held.helium, held.heliumK!) } : { nitrogen };
}

/** Ambient pressure at the next level. */
export function levelAmbientStep(
  chain: Chain,
  { surfaceBar, barPerMetre }: Timeline,
  site: Site,
  nextM: number,
): Named {
  return chain.add({
    id: 'step:next-ambient',
    title: 'pressure around you at the next level',
    why: 'Where you would climb to from here.',
    expression: 'p_surface + w * d_next',
    symbol: 'p_next',
    values: [
      site.surface,
      site.water,
      fromSetting('d_next', { ...quantity(nextM, 'm'), meaning: 'depth of the next level' }),
    ],
    result: quantity(surfaceBar + nextM * barPerMetre, 'bar'),
    source: SOURCES.water,
  });
}

/** The gradient factor at the next level: the one there is, or read off the line from low to high. */
export function levelFactor(
  chain: Chain,
  { gradientFactors }: Limits,
  { nextM, nextAnchorM, nextGf }: RequiredWait,
): Named {
  const { low, high } = gradientFactors;
  if (low === high) return gradientFactor('gf', high);
  if (nextM === 0 || nextAnchorM === 0) return gradientFactor('gf_high', high, 'high');
  const lowFactor = gradientFactor('gf_low', low, 'low');
  return chain.add({
    id: 'step:next-gf',
    title: 'gradient factor at the next level',
    why: 'It runs straight from low at the anchor to high at the surface.',
    expression: 'gf_high + (gf_low - gf_high) * min(1, d_next / d_anchor)',
    symbol: 'gf_next',
    values: [
      lowFactor,
      gradientFactor('gf_high', high, 'high'),
      fromSetting('d_next', { ...quantity(nextM, 'm'), meaning: 'depth of the next level' }),
      fromSetting('d_anchor', {
        ...quantity(nextAnchorM, 'm'),
        meaning: 'depth of the anchor, where the line from low to high begins',
      }),
    ],
    result: quantity(nextGf, ''),
    source: SOURCES.gradientFactors,
  });
}

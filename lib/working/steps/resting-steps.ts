import { AIR, nitrogenFraction } from '../../physics/gas';
import { surfaceNitrogenBar } from '../../rules/surface/surface-interval';
import { fromPublished, quantity, type Chain } from '../chain';
import type { Instant } from '../instant';
import { haldane } from '../../tissue/loading';
import { fromSearch } from '../chain';
import type { Inert } from './compartment-steps';
import { GAS_NAMES, lungTerm, type InertGas, type Site } from './pressure-steps';
import { SOURCES } from '../sources';
import type { Tension } from './tension-steps';
import type { Named } from '../working';

/** Nitrogen in the lungs on air at the surface: what every compartment tends to after a dive. */
export function restingStep(chain: Chain, site: Site, { timeline }: Instant): Named {
  const lungs = lungTerm(timeline);
  return chain.add({
    id: 'step:resting',
    title: 'nitrogen pressure in your lungs at the surface on air',
    why: 'After the dive every compartment heads for this.',
    expression: `(p_surface ${lungs.expression}) * F_air`,
    symbol: 'P_rest',
    values: [
      site.surface,
      ...lungs.values,
      fromPublished('F_air', { ...quantity(nitrogenFraction(AIR), ''), meaning: 'fraction of nitrogen in air' }),
    ],
    result: quantity(surfaceNitrogenBar(timeline), 'bar'),
    source: SOURCES.lungs,
  });
}

/** The wait that is looked for where no formula gives it. */
export function soughtWait(minutes: number, horizonMin: number): Named {
  return fromSearch('t', {
    ...quantity(Math.min(minutes, horizonMin), 'min'),
    meaning: 'time from now at the surface',
  });
}

/** Both gases of a compartment after a wait at the surface on air. */
export function restedSteps(chain: Chain, held: Tension, rest: Named, wait: Named): Inert {
  const after = (of: InertGas, now: Named, k: Named) =>
    chain.add({
      id: `step:rested-${of}`,
      title: `${GAS_NAMES[of]} in this compartment at that time`,
      why: 'At one pressure the gap to the lungs shrinks by half in every half-time (Haldane).',
      expression: of === 'N2' ? `P_rest + (P_N2 - P_rest) * exp(-k_N2 * t)` : 'P_He * exp(-k_He * t)',
      symbol: `P_${of}_later`,
      values: of === 'N2' ? [rest, now, k, wait] : [now, k, wait],
      result: quantity(
        haldane(now.value.value, of === 'N2' ? rest.value.value : 0, k.value.value, wait.value.value),
        'bar',
      ),
      source: SOURCES.loading,
    });
  return { nitrogen: after('N2', held.nitrogen, held.nitrogenK), helium: after('He', held.helium!, held.heliumK!) };
}

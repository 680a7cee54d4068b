import { ceilingAtGf, coefficientsOf, inertBarOf, SAME_DEPTH_M } from '../../ascent/ceiling';
import { loadAt } from '../../ascent/figures';
import { COMPARTMENTS } from '../../tissue/coefficients';
import { toleratedAmbientBar } from '../../tissue/limit';
import { fromDive, quantity, type Chain } from '../chain';
import { coefficientSteps, inertStep, type Coefficients } from '../steps/compartment-steps';
import type { Instant } from '../instant';
import type { Site } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Named } from '../working';

/** A compartment already spoken of in the working, with its tension and coefficients. */
export interface Spoken {
  readonly compartment: number;
  readonly tension: Named;
  readonly coefficients: Coefficients;
}

/**
 * Where the line from low to high begins: the deepest ceiling under `low` since the dive became bound, not rounded to a
 * stop. Where that was at another instant than this one, it is taken as given.
 */
export function anchorSteps(
  chain: Chain,
  site: Site,
  instant: Instant,
  anchorM: number,
  low: Named,
  spoken: Spoken,
): Named {
  const { timeline, sample } = instant;
  const load = loadAt(timeline, sample);
  const ceiling = ceilingAtGf(load, low.value.value);
  if (ceiling.leader === 0 || Math.abs(ceiling.depthM - anchorM) > SAME_DEPTH_M) {
    return fromDive('d_anchor', {
      ...quantity(anchorM, 'm'),
      meaning: 'deepest ceiling under the low gradient factor since a ceiling has been there',
    });
  }
  const compartment = ceiling.leader - 1;
  const { tension, coefficients } =
    compartment === spoken.compartment ? spoken : deepestUnderLow(chain, instant, compartment);
  const { a, b } = coefficientsOf(load, compartment);
  const gf = low.symbol;
  const tolerated = chain.add({
    id: 'step:low-tolerated',
    title: `lowest pressure the compartment deepest under the low gradient factor tolerates`,
    why: 'The limit solved for the pressure around you, under the low gradient factor.',
    expression: `(${tension.symbol} - ${coefficients.a.symbol} * ${gf}) / (${gf} / ${coefficients.b.symbol} - ${gf} + 1)`,
    symbol: 'p_low',
    values: [tension, coefficients.a, low, coefficients.b],
    result: quantity(toleratedAmbientBar(inertBarOf(load, compartment), a, b, low.value.value), 'bar'),
    source: SOURCES.gradientFactors,
  });
  return chain.add({
    id: 'step:anchor',
    title: 'ceiling under the low gradient factor, where the line from low to high begins',
    why: 'The depth at which the water and the air give that pressure: the deepest since a ceiling has been there.',
    expression: `(p_low - p_surface) / w`,
    symbol: 'd_anchor',
    values: [tolerated, site.surface, site.water],
    result: quantity(ceiling.depthM, 'm'),
    source: SOURCES.water,
  });
}

/** Another compartment than the working's own sets the anchor: its tensions are taken as they are. */
function deepestUnderLow(
  chain: Chain,
  { timeline, sample }: Instant,
  compartment: number,
): Omit<Spoken, 'compartment'> {
  const at = sample * COMPARTMENTS + compartment;
  const held = (symbol: string, bar: number, gas: string) =>
    fromDive(symbol, {
      ...quantity(bar, 'bar'),
      meaning: `${gas} in the compartment deepest under the low gradient factor`,
    });
  const nitrogen = held('P_N2_low', timeline.nitrogenBar[at]!, 'nitrogen');
  const heliumBar = timeline.heliumBar[at]!;
  const inert = heliumBar > 0 ? { nitrogen, helium: held('P_He_low', heliumBar, 'helium') } : { nitrogen };
  const coefficients = coefficientSteps(chain, timeline, compartment, inert, '_low');
  const tension = inertStep(chain, inert, {
    id: 'step:low-inert',
    symbol: 'P_low',
    title: 'both gases in the compartment deepest under the low gradient factor',
  });
  return { tension, coefficients };
}

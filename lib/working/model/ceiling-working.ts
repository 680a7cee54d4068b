import { ceilingAtGf, ceilingOnLine, coefficientsOf, inertBarOf, type Load } from '../../ascent/ceiling';
import { loadAt } from '../../ascent/figures';
import { surfaceMarginBar } from '../../ascent/no-stop';
import { toleratedAmbientBar } from '../../tissue/limit';
import { emptyTissues } from '../../tissue/tissues';
import { deciding, newChain, quantity, type Chain } from '../chain';
import { coefficientSteps, inertStep, type Coefficients } from '../steps/compartment-steps';
import { anchorSteps } from './anchor-steps';
import type { Instant } from '../instant';
import { gradientFactor } from '../steps/limit-steps';
import { lineCeilingSteps } from './line-ceiling-steps';
import { siteSteps, type Site } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import { tensionSteps } from '../steps/tension-steps';
import type { Named, Working, WorkingTable } from '../working';
import { ALL_COMPARTMENTS } from '../../tissue/coefficients';

/**
 * Why the ceiling is where it is: the compartment that sets it, or the one nearest to setting one. Under one gradient
 * factor it is solved for directly; on a line from low to high the limit is a parabola in depth and its root is the ceiling.
 */
export function ceilingWorking(instant: Instant): Working {
  const { timeline, figures, sample } = instant;
  const { low, high } = figures.limits.gradientFactors;
  const load = loadAt(timeline, sample);
  const depthM = figures.ceilingM[sample]!;
  const anchorM = figures.anchorM[sample]!;
  const onLine = low !== high && anchorM > 0;
  const compartment = (figures.ceilingLeader[sample] || nearestToCeiling(load, high)) - 1;
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const held = tensionSteps(chain, site, instant, compartment);
  const coefficients = coefficientSteps(chain, timeline, compartment, held);
  const tension = inertStep(chain, held, {
    id: 'step:inert',
    symbol: 'P_inert',
    title: 'both gases in this compartment now',
  });
  let tolerated: Named;
  if (onLine) {
    const lowFactor = gradientFactor('gf_low', low, 'low');
    const highFactor = gradientFactor('gf_high', high, 'high');
    const anchor = anchorSteps(chain, site, instant, anchorM, lowFactor, {
      compartment,
      tension,
      coefficients,
    });
    tolerated = lineCeilingSteps(chain, site, {
      tension,
      coefficients,
      low: lowFactor,
      high: highFactor,
      anchor,
      ceilingM: depthM,
    });
  } else {
    const gf = low === high ? gradientFactor('gf', high) : gradientFactor('gf_high', high, 'high');
    tolerated = oneFactorSteps(chain, site, load, { compartment, tension, coefficients, gf, ceilingM: depthM });
  }
  return {
    reading: 'ceiling',
    title: 'Ceiling',
    compartment: compartment + 1,
    answer: {
      ...quantity(depthM, 'm'),
      text:
        depthM > 0
          ? 'Shallower than this, this compartment would hold more than it tolerates. Of the sixteen it allows the least.'
          : 'There is no ceiling: every compartment is tolerated at the surface. This one is nearest to setting one.',
    },
    deciding: deciding(chain, [tension, 'held'], [tolerated, 'tolerated around you']),
    steps: chain.steps,
    table: onLine ? lineTable(instant, load, compartment) : oneFactorTable(instant, load, compartment),
    cautions: [...(held.legsLeftOut > 0 ? [REMARKS.earlierLegs] : [])],
  };
}

/** The compartment (1–16) with the least room to its limit at the surface. */
function nearestToCeiling(load: Load, gf: number): number {
  const allBar = ALL_COMPARTMENTS.map((c) => toleratedBar(load, gf, c));
  return allBar.indexOf(Math.max(...allBar)) + 1;
}

function toleratedBar(load: Load, gf: number, compartment: number): number {
  const { a, b } = coefficientsOf(load, compartment);
  return toleratedAmbientBar(inertBarOf(load, compartment), a, b, gf);
}

interface OneFactorGiven {
  readonly compartment: number;
  readonly tension: Named;
  readonly coefficients: Coefficients;
  readonly gf: Named;
  readonly ceilingM: number;
}

function oneFactorSteps(
  chain: Chain,
  site: Site,
  load: Load,
  { compartment, tension, coefficients: { a, b }, gf, ceilingM }: OneFactorGiven,
): Named {
  const pressure = chain.add({
    id: 'step:tolerated',
    title: 'lowest pressure around you that this compartment tolerates',
    why: 'The limit solved for the pressure around you.',
    expression: `(${tension.symbol} - ${a.symbol} * ${gf.symbol}) / (${gf.symbol} / ${b.symbol} - ${gf.symbol} + 1)`,
    symbol: 'p_tol',
    values: [tension, a, gf, b],
    result: quantity(toleratedBar(load, gf.value.value, compartment), 'bar'),
    source: SOURCES.gradientFactors,
  });
  chain.add({
    id: 'step:ceiling',
    title: 'ceiling',
    why: 'The depth at which the water and the air give that pressure; a depth above the surface is none.',
    expression: 'max(0, (p_tol - p_surface) / w)',
    symbol: 'd_ceiling',
    values: [pressure, site.surface, site.water],
    result: quantity(ceilingM, 'm'),
    source: SOURCES.water,
  });
  return pressure;
}

function oneFactorTable({ timeline, figures }: Instant, load: Load, compartment: number): WorkingTable {
  const { high } = figures.limits.gradientFactors;
  return sixteenTable(
    timeline,
    'The lowest pressure each compartment tolerates, and the depth where it is found',
    [
      { title: 'tension now', unit: 'bar', of: (c) => inertBarOf(load, c) },
      { title: 'lowest pressure tolerated', unit: 'bar', of: (c) => toleratedBar(load, high, c) },
      { title: 'ceiling', unit: 'm', of: (c) => ceilingAtGf(loadOfOne(load, c), high).depthM },
    ],
    compartment,
  );
}

function lineTable({ timeline, figures, sample }: Instant, load: Load, compartment: number): WorkingTable {
  const { gradientFactors } = figures.limits;
  const anchorM = figures.anchorM[sample]!;
  return sixteenTable(
    timeline,
    'The ceiling each compartment alone would set on the line from low to high',
    [
      { title: 'tension now', unit: 'bar', of: (c) => inertBarOf(load, c) },
      {
        title: 'limit at the surface',
        unit: 'bar',
        of: (c) => surfaceMarginBar(load, gradientFactors.high, c) + inertBarOf(load, c),
      },
      { title: 'ceiling', unit: 'm', of: (c) => ceilingOnLine(loadOfOne(load, c), gradientFactors, anchorM).depthM },
    ],
    compartment,
  );
}

/** The load with every compartment empty but one, so that the ceiling found is that one's own. */
function loadOfOne(load: Load, compartment: number): Load {
  const alone = emptyTissues();
  alone.nitrogenBar[compartment] = load.nitrogenBar[load.at + compartment]!;
  alone.heliumBar[compartment] = load.heliumBar[load.at + compartment]!;
  return { ...load, ...alone, at: 0 };
}

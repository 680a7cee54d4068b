import { gradientFactorAt } from '../../ascent/ceiling';
import { limitBar, mixedCoefficient } from '../../tissue/limit';
import { fromSetting, newChain, quantity, type Chain } from '../chain';
import { coefficientSteps, compartmentName, type Inert } from '../steps/compartment-steps';
import type { Instant } from '../instant';
import { gradientFactor, limitStep } from '../steps/limit-steps';
import { ambientStep, DEPTH_RANGE_M, depthNow, FRACTION_RANGE, siteSteps } from '../steps/pressure-steps';
import { sixteenTable } from '../steps/sixteen-table';
import { SOURCES } from '../sources';
import type { Named, Working } from '../working';

/** What a compartment is asked about, whatever it holds. */
export interface Tolerated {
  /** 1–16. */
  readonly compartment: number;
  /** Share of helium in the inert gas it holds, 0–1. */
  readonly heliumShare: number;
  /** Where the line from low to high begins, m; 0 for none. */
  readonly anchorM: number;
}

/** How much inert gas a compartment may hold at the depth of an instant, under the gradient factor in force there. */
export function toleratedWorking(instant: Instant, { compartment, heliumShare, anchorM }: Tolerated): Working {
  const { timeline, figures, sample } = instant;
  const { compartments } = timeline;
  const own = compartment - 1;
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const pressure = ambientStep(chain, site, instant);
  const { a, b } = coefficientSteps(chain, timeline, own, heldBy(heliumShare));
  const gf = factorStep(chain, instant, anchorM);
  const limit = limitStep(
    chain,
    {
      id: 'step:tolerated',
      symbol: 'M',
      title: 'what this compartment may hold here',
      why: 'The gradient factor keeps a share of the room between the pressure around you and the model’s own limit.',
    },
    pressure,
    gf,
    { a, b },
  );
  const [pressureBar, factor] = [
    timeline.ambientBar[sample]!,
    gradientFactorAt(timeline.depthM[sample]!, anchorM, figures.limits.gradientFactors),
  ];
  const mixed = (ofNitrogen: Float64Array, ofHelium: Float64Array, c: number) =>
    mixedCoefficient(1 - heliumShare, heliumShare, ofNitrogen[c]!, ofHelium[c]!);
  return {
    reading: `tolerated-${compartment}`,
    title: `What compartment ${compartmentName(timeline, own)} tolerates here`,
    compartment,
    answer: {
      ...quantity(limit.value.value, 'bar'),
      text: 'More than this at this depth is past the chosen limits, whatever else is so of the dive.',
    },
    steps: chain.steps,
    table: sixteenTable(
      timeline,
      'What each compartment may hold at this depth',
      [
        {
          title: 'may hold',
          unit: 'bar',
          of: (c) =>
            limitBar(
              mixed(compartments.nitrogenA, compartments.heliumA, c),
              mixed(compartments.nitrogenB, compartments.heliumB, c),
              factor,
              pressureBar,
            ),
        },
      ],
      own,
    ),
  };
}

function heldBy(heliumShare: number): Inert {
  const share = (symbol: string, of: string, value: number) =>
    fromSetting(symbol, { ...quantity(value, ''), meaning: `share of ${of} in what is held`, within: FRACTION_RANGE });
  const nitrogen = share('S_N2', 'nitrogen', 1 - heliumShare);
  return heliumShare > 0 ? { nitrogen, helium: share('S_He', 'helium', heliumShare) } : { nitrogen };
}

/** The factor set where there is but one in force; otherwise the line from high at the surface to low at the anchor. */
function factorStep(chain: Chain, instant: Instant, anchorM: number): Named {
  const { low, high } = instant.figures.limits.gradientFactors;
  if (low === high) return gradientFactor('gf', high);
  const highest = gradientFactor('gf_high', high, 'high');
  if (anchorM === 0) return highest;
  return chain.add({
    id: 'step:gf',
    title: 'gradient factor at this depth',
    why: 'It runs straight from high at the surface to low at the anchor, and is low below that.',
    expression: 'gf_high + (gf_low - gf_high) * min(d / d_anchor, 1)',
    symbol: 'gf_d',
    values: [
      highest,
      gradientFactor('gf_low', low, 'low'),
      depthNow(instant),
      fromSetting('d_anchor', {
        ...quantity(anchorM, 'm'),
        meaning: 'depth of the anchor, where the line from low to high begins',
        within: [Math.min(1, anchorM), Math.max(DEPTH_RANGE_M[1], anchorM)],
      }),
    ],
    result: quantity(gradientFactorAt(instant.timeline.depthM[instant.sample]!, anchorM, { low, high }), ''),
    source: SOURCES.gradientFactors,
  });
}

import { inertBarOf } from '../../ascent/ceiling';
import { loadAt } from '../../ascent/figures';
import { gasName } from '../../physics/gas';
import { COMPARTMENTS } from '../../tissue/coefficients';
import { newChain, quantity, type Chain } from '../chain';
import { compartmentName } from '../steps/compartment-steps';
import type { Instant } from '../instant';
import { siteSteps } from '../steps/pressure-steps';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import { tensionSteps, type Tension } from '../steps/tension-steps';
import type { Quantity, StepId, Working, WorkingTable } from '../working';

/** How a compartment (1–16) came to hold what it holds: the start of the dive, then leg by leg. */
export function tensionWorking(instant: Instant, compartment: number): Working {
  if (!Number.isInteger(compartment) || compartment < 1 || compartment > COMPARTMENTS) {
    throw new RangeError(`there is no compartment ${compartment}: compartments are numbered 1 to ${COMPARTMENTS}`);
  }
  const { timeline, sample } = instant;
  const index = compartment - 1;
  const chain = newChain();
  const site = siteSteps(chain, timeline);
  const held = tensionSteps(chain, site, instant, index);
  const tension = quantity(inertBarOf(loadAt(timeline, sample), index), 'bar');
  chain.add({
    id: 'step:inert',
    title: 'what this compartment holds now',
    why: held.helium ? 'Both gases together.' : 'It holds nitrogen alone.',
    expression: held.helium ? 'P_N2 + P_He' : 'P_N2',
    symbol: 'P_inert',
    values: held.helium ? [held.nitrogen, held.helium] : [held.nitrogen],
    result: tension,
    source: SOURCES.dalton,
  });
  return {
    reading: `tension-${compartment}`,
    title: `Tension in compartment ${compartmentName(timeline, index)}`,
    compartment,
    answer: { ...tension, text: 'The gas dissolved in this compartment, as a pressure.' },
    steps: chain.steps,
    table: legTable(chain, held),
    ...(held.legsLeftOut > 0 ? { cautions: [REMARKS.earlierLegs] } : {}),
  };
}

/** One row for each leg worked through: what was breathed, for how long, and what the compartment held at its end. */
function legTable(chain: Chain, { legs, helium }: Tension): WorkingTable {
  const result = (id: StepId): Quantity => chain.steps.find((step) => step.id === id)!.result;
  const gases = helium ? (['N2', 'He'] as const) : (['N2'] as const);
  return {
    caption: 'What each leg left in this compartment',
    columns: [
      { title: 'leg', unit: '' },
      { title: 'gas breathed', unit: '' },
      { title: 'from', unit: 'm' },
      { title: 'to', unit: 'm' },
      { title: 'time', unit: 'min' },
      ...gases.map((of) => ({
        title: of === 'N2' ? 'nitrogen at the end' : 'helium at the end',
        unit: 'bar' as const,
      })),
    ],
    rows: legs.map(({ name, title, gas, fromM, toM, minutes }) => [
      title,
      gasName(gas),
      fromM,
      toM,
      minutes,
      ...gases.map((of) => result(`step:tension-${of}-${name}`).value),
    ]),
  };
}

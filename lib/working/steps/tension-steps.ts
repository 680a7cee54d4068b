import { gasAt, type Timeline } from '../../dive/timeline';
import { COMPARTMENTS } from '../../tissue/coefficients';
import type { Chain } from '../chain';
import { rateConstantStep, type Inert } from './compartment-steps';
import type { Instant } from '../instant';
import { legSteps, tensionAfterLeg, type WorkingLeg } from './leg-steps';
import { legsUntilNow } from './legs-until-now';
import type { InertGas, Site } from './pressure-steps';
import { leftByEarlierLegs, startSteps } from './start-steps';
import type { Named } from '../working';

/** So many legs of a dive are worked through, the latest ones; what came before is taken as it stood. */
export const LEGS_SHOWN = 12;
/** A tension further than this from what a leg leads to did not come from that leg: the tissues began anew there, bar. */
const BEGAN_ANEW_BAR = 1e-9;

/** A compartment's tensions now with the rate constants they go by. */
export interface Tension extends Inert {
  readonly nitrogenK: Named;
  readonly heliumK?: Named;
  readonly legs: readonly WorkingLeg[];
  /** How many earlier legs are not worked through. */
  readonly legsLeftOut: number;
}

/** Whether a compartment needs helium looked at: it holds some, or helium is breathed. */
export function hasHelium({ timeline, sample }: Instant, compartment: number): boolean {
  return timeline.heliumBar[sample * COMPARTMENTS + compartment]! > 0 || gasAt(timeline, sample).he > 0;
}

/**
 * A compartment's tensions now and how they got there: where the diver began, then leg by leg. Where the tissues began
 * anew on the way, the legs before are no part of it.
 */
export function tensionSteps(
  chain: Chain,
  site: Site,
  instant: Instant,
  compartment: number,
  withHelium = hasHelium(instant, compartment),
): Tension {
  const { legs, legsLeftOut, beginsAt } = legsToNow(instant, compartment);
  const story = (of: InertGas): { readonly now: Named; readonly k: Named } => {
    const k = rateConstantStep(chain, instant.timeline, compartment, of);
    const now = `P_${of}`;
    const symbol = legs.length === 0 ? now : `P_${of}_0`;
    let tension =
      beginsAt === undefined
        ? startSteps(chain, site, instant.timeline, { compartment, of, k, symbol })
        : leftByEarlierLegs(symbol, tensionsOf(instant.timeline, of)[beginsAt * COMPARTMENTS + compartment]!);
    legs.forEach(({ leg, endSample }, index) => {
      const after = index === legs.length - 1 ? now : `P_${of}_${leg.name}`;
      const resultBar = tensionsOf(instant.timeline, of)[endSample * COMPARTMENTS + compartment]!;
      tension = legSteps(
        chain,
        { timeline: instant.timeline, site, of, k, group: 'history' },
        leg,
        tension,
        after,
        resultBar,
      );
    });
    return { now: tension, k };
  };
  const nitrogen = story('N2');
  const told = { nitrogen: nitrogen.now, nitrogenK: nitrogen.k, legs: legs.map(({ leg }) => leg), legsLeftOut };
  if (!withHelium) return told;
  const helium = story('He');
  return { ...told, helium: helium.now, heliumK: helium.k };
}

/** A timeline's tensions of one gas, sixteen for each sample, bar. */
function tensionsOf(timeline: Timeline, of: InertGas): Float64Array {
  return of === 'N2' ? timeline.nitrogenBar : timeline.heliumBar;
}

interface LegsToNow {
  readonly legs: readonly { readonly leg: WorkingLeg; readonly endSample: number }[];
  readonly legsLeftOut: number;
  /** Sample at which earlier legs left the tension; nothing where the diver's start is shown. */
  readonly beginsAt: number | undefined;
}

function legsToNow({ timeline, sample }: Instant, compartment: number): LegsToNow {
  const current = timeline.leg[sample]!;
  const all = legsUntilNow(timeline, sample);
  const firstOf = (leg: number) => all[leg]!.startSample;
  const shown = Math.max(0, all.length - LEGS_SHOWN);
  let first = shown;
  for (let index = shown; index < current; index += 1) {
    if (!leadsOn(timeline, compartment, firstOf(index), all[index]!)) first = index + 1;
  }
  const beginsAt = first === 0 || first > shown ? undefined : firstOf(first);
  const legs = all.slice(first).filter(({ leg }) => leg.minutes > 0);
  return { legs, legsLeftOut: beginsAt === undefined ? 0 : first, beginsAt };
}

/** Whether a leg leads to the tensions the next one begins with. */
function leadsOn(
  timeline: Timeline,
  compartment: number,
  startSample: number,
  { leg, endSample }: LegsToNow['legs'][number],
): boolean {
  const { nitrogenK, heliumK } = timeline.compartments;
  return (['N2', 'He'] as const).every((of) => {
    const tensions = tensionsOf(timeline, of);
    const k = (of === 'N2' ? nitrogenK : heliumK)[compartment]!;
    const expected = tensionAfterLeg(timeline, k, of, tensions[startSample * COMPARTMENTS + compartment]!, leg);
    return Math.abs(expected - tensions[endSample * COMPARTMENTS + compartment]!) <= BEGAN_ANEW_BAR;
  });
}

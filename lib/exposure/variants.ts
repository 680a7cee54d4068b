import type { Dive, Step } from '../dive/dive';
import { gasName, sameGas, type Gas } from '../physics/gas';
import { METRES_PER_FOOT } from '../quantity/length';
import { sayDepth } from '../quantity/depth';
import type { UnitSystem } from '../quantity/unit-system';
import { bottomOf, planFrom, type AscentPlan } from './ascent-plan';

/** Something that goes otherwise than planned: one a diver may choose to look at. */
export type Slip =
  | { readonly kind: 'deeper' }
  | { readonly kind: 'longer' }
  | { readonly kind: 'lost gas'; readonly gas: Gas };

export interface Variant {
  /** What went otherwise; nothing as planned, several at once. */
  readonly slips: readonly Slip[];
  /** Such as “50% lost”. */
  readonly title: string;
  readonly plan: AscentPlan;
  /** How much longer the ascent takes than planned, min; Infinity where it would never end, NaN where neither would. */
  readonly longerMin: number;
}

export interface VariantOptions {
  readonly overstayMin?: number;
  readonly deeperM?: number;
  /** The units of the titles, and of how much deeper unless told: 2 m, or 10 ft. */
  readonly system?: UnitSystem;
  /** Which dive of the day, from 0; the last unless told. */
  readonly diveNumber?: number;
  /** What is looked at; every slip there is unless told. */
  readonly slips?: readonly Slip[];
}

/** Every slip a dive has room for: deeper, longer, and each gas it carries lost. */
export function slipsOf({ settings }: Dive): Slip[] {
  return [
    { kind: 'deeper' },
    { kind: 'longer' },
    ...settings.carried
      .filter(({ gas }, index) => settings.carried.findIndex((one) => sameGas(one.gas, gas)) === index)
      .map(({ gas }): Slip => ({ kind: 'lost gas', gas })),
  ];
}

/** How much a dive is overstayed, and how much deeper it goes, unless told. */
const OVERSTAY_MIN = 5;
const deeperBy = ({ system = 'metric', deeperM = system === 'metric' ? 2 : 10 * METRES_PER_FOOT }: VariantOptions) =>
  deeperM;

/** A slip in a few words: `2 m deeper`, `5 min longer`, `50% lost`. */
export function saySlip(slip: Slip, options: VariantOptions = {}): string {
  if (slip.kind === 'lost gas') return `${gasName(slip.gas)} lost`;
  if (slip.kind === 'longer') return `${options.overstayMin ?? OVERSTAY_MIN} min longer`;
  return `${sayDepth(deeperBy(options), options.system ?? 'metric')} deeper`;
}

/**
 * A dive as planned, and after it the same with each slip by itself and, where there are several, with all of them at once:
 * what each asks for on the way up. As planned comes first; the others follow by how much longer they take, the longest first.
 */
export function variantsOf(dive: Dive, options: VariantOptions = {}): Variant[] {
  const { overstayMin = OVERSTAY_MIN, diveNumber, slips = slipsOf(dive) } = options;
  const bottom = bottomOf(dive, diveNumber);
  const made = (title: string, together: readonly Slip[]) => {
    const happens = (kind: Slip['kind']) => together.some((slip) => slip.kind === kind);
    const isLost = (gas: Gas) => together.some((slip) => slip.kind === 'lost gas' && sameGas(slip.gas, gas));
    const stayed = happens('longer') ? overstayed(bottom, overstayMin) : bottom;
    const left = dive.settings.carried.filter(({ gas }) => !isLost(gas));
    const plan = planFrom(happens('deeper') ? deepened(stayed, deeperBy(options)) : stayed, { carried: left });
    return { slips: together, title, plan };
  };
  const wholeMin = ({ plan }: Pick<Variant, 'plan'>) => plan.schedule.timeToSurfaceMin;
  const planned = made('as planned', []);
  const others = slips.map((slip) => made(saySlip(slip, options), [slip]));
  if (slips.length > 1) others.push(made('all at once', slips));
  others.sort((one, other) => wholeMin(other) - wholeMin(one) || 0);
  return [planned, ...others].map((one) => ({ ...one, longerMin: wholeMin(one) - wholeMin(planned) }));
}

/** The same with more time at the end. */
function overstayed(bottom: Dive, minutes: number): Dive {
  return { ...bottom, steps: [...bottom.steps, { kind: 'stay', durationS: minutes * 60 }] };
}

/**
 * The same with the deepest depth of the last dive deeper. Rates stay as they were, so reaching it takes longer; stays
 * last as long as before.
 */
function deepened(bottom: Dive, byM: number): Dive {
  const firstOfDive = bottom.steps.findLastIndex(({ kind }) => kind === 'interval') + 1;
  const own = bottom.steps.slice(firstOfDive);
  const deepestM = Math.max(0, ...own.map((step) => ('toM' in step ? step.toM : 0)));
  let fromM = 0;
  let newFromM = 0;
  const steps = own.map((step): Step => {
    if (!('toM' in step)) return step;
    const toM = step.toM === deepestM ? step.toM + byM : step.toM;
    const wayM = Math.abs(step.toM - fromM);
    const durationS = wayM > 0 ? (step.durationS * Math.abs(toM - newFromM)) / wayM : step.durationS;
    fromM = step.toM;
    newFromM = toM;
    return { ...step, toM, durationS };
  });
  return { ...bottom, steps: [...bottom.steps.slice(0, firstOfDive), ...steps] };
}

import type { Dive, Step } from '../dive/dive';
import { gasName, sameGas, type Gas } from '../physics/gas';
import { METRES_PER_FOOT } from '../quantity/length';
import { sayDepth } from '../quantity/depth';
import type { UnitSystem } from '../quantity/unit-system';
import { bottomOf, planFrom, type AscentPlan } from './ascent-plan';

/** What goes otherwise than planned. */
type VariantKind = 'as planned' | 'lost gas' | 'overstayed' | 'deeper' | 'deeper and overstayed';

export interface Variant {
  readonly kind: VariantKind;
  /** Such as “50% is lost”. */
  readonly title: string;
  /** The gas that is lost, if one is. */
  readonly lost?: Gas;
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
}

/**
 * A dive as planned, and beside it the same with each carried gas lost, stayed five minutes too long, two metres deeper,
 * and both at once: what each asks for on the way up.
 */
export function variantsOf(dive: Dive, options: VariantOptions = {}): Variant[] {
  const { overstayMin = 5, system = 'metric', diveNumber } = options;
  const { deeperM = system === 'metric' ? 2 : 10 * METRES_PER_FOOT } = options;
  const deeper = `${sayDepth(deeperM, system)} deeper`;
  const bottom = bottomOf(dive, diveNumber);
  const { carried } = dive.settings;
  const planned = planFrom(bottom);
  const variant = (kind: VariantKind, title: string, plan: AscentPlan, lost?: Gas): Variant => ({
    kind,
    title,
    ...(lost && { lost }),
    plan,
    longerMin: plan.schedule.timeToSurfaceMin - planned.schedule.timeToSurfaceMin,
  });
  const stayed = overstayed(bottom, overstayMin);
  return [
    variant('as planned', 'As planned', planned),
    ...carried.map(({ gas }) => {
      const left = carried.filter((one) => !sameGas(one.gas, gas));
      return variant('lost gas', `${gasName(gas)} is lost`, planFrom(bottom, { carried: left }), gas);
    }),
    variant('overstayed', `Stayed ${overstayMin} min too long`, planFrom(stayed)),
    variant('deeper', deeper, planFrom(deepened(bottom, deeperM))),
    variant('deeper and overstayed', `${deeper} and ${overstayMin} min too long`, planFrom(deepened(stayed, deeperM))),
  ];
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

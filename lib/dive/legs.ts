import { AIR, sameGas, type Gas } from '../physics/gas';
import type { Dive } from './dive';

/** A stretch of the dive in which the gas stays the same and the depth changes evenly or not at all. */
export interface Leg {
  readonly startS: number;
  readonly endS: number;
  readonly fromM: number;
  readonly toM: number;
  readonly gas: number;
  /** Index into the dive's steps. */
  readonly step: number;
  /** Which dive of the day, from 0; an interval belongs to the dive it follows. */
  readonly diveNumber: number;
  /** At the surface between dives, breathing air. */
  readonly interval: boolean;
}

export interface Legs {
  readonly legs: readonly Leg[];
  /** The gases breathed, each once; a leg names its own by index. */
  readonly gases: readonly Gas[];
  readonly endS: number;
}

/**
 * The dive's steps as legs on one clock. A switch takes no time; a new dive starts on the dive's first gas. A dive
 * without a step that takes time is one leg of no length at the surface.
 */
export function legsOf(dive: Dive): Legs {
  const gases: Gas[] = [];
  const indexOf = (gas: Gas) => {
    const known = gases.findIndex((other) => sameGas(other, gas));
    return known >= 0 ? known : gases.push(gas) - 1;
  };
  const legs: Leg[] = [];
  let timeS = 0;
  let depthM = 0;
  let gas = indexOf(dive.settings.gas);
  let diveNumber = 0;
  let afterInterval = false;
  dive.steps.forEach((step, index) => {
    if (step.kind === 'switch') {
      gas = indexOf(step.gas);
      if (afterInterval) {
        diveNumber += 1;
        afterInterval = false;
      }
      return;
    }
    const interval = step.kind === 'interval';
    if (!interval && afterInterval) {
      diveNumber += 1;
      afterInterval = false;
    }
    const toM = step.kind === 'descend' || step.kind === 'ascend' ? step.toM : depthM;
    legs.push({
      startS: timeS,
      endS: timeS + step.durationS,
      fromM: depthM,
      toM,
      gas: interval ? indexOf(AIR) : gas,
      step: index,
      diveNumber,
      interval,
    });
    timeS += step.durationS;
    depthM = toM;
    if (interval) {
      gas = indexOf(dive.settings.gas);
      afterInterval = true;
    }
  });
  if (legs.length === 0) {
    legs.push({ startS: 0, endS: 0, fromM: 0, toM: 0, gas, step: 0, diveNumber: 0, interval: false });
  }
  return { legs, gases, endS: timeS };
}

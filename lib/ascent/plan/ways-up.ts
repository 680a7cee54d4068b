import { sameGas, type Gas } from '../../physics/gas';
import { SAME_DEPTH_M } from '../ceiling';
import type { Limits } from '../limits';
import type { AscentSite } from './schedule';
import { levelM } from './stop-levels';
import { sharesOf, stretchOf, type Stretch } from './stretch';

/** The parts of the limits that the ways up from one site depend on: no gradient factors. */
export type PlannedWith = Pick<Limits, 'plan' | 'carried' | 'gas'>;

/** The ways from one depth to another by a plan's rate and gases, and what breathing them does to every compartment. */
export class WaysUp {
  private readonly sharesAfter: (minutes: number) => Float64Array;
  private readonly switchDepths: readonly number[];
  /** The ways up from each stop level on a gas to the next: they are the same every time. */
  private readonly fromLevels = new WeakMap<Gas, Stretch[][]>();

  constructor(
    private readonly limits: PlannedWith,
    private readonly site: AscentSite,
  ) {
    this.sharesAfter = sharesOf(site.compartments);
    this.switchDepths = [...new Set(limits.carried.map(({ fromM }) => fromM))].sort((one, other) => other - one);
  }

  /** The carried gas richest in oxygen that may be breathed here, if it is richer than the one in use. */
  bestGas(depthM: number, inUse: Gas): Gas {
    let best = inUse;
    for (const { gas, fromM } of this.limits.carried) {
      if (fromM + SAME_DEPTH_M >= depthM && gas.o2 > best.o2) best = gas;
    }
    return best;
  }

  /** What is breathed on a way down to a depth: a gas in use that is not allowed there is left for the one dived with. */
  gasDownTo(depthM: number, inUse: Gas): Gas {
    const { carried, gas: divedWith } = this.limits;
    const tooDeep = carried.some(({ gas, fromM }) => sameGas(gas, inUse) && fromM + SAME_DEPTH_M < depthM);
    return this.bestGas(depthM, tooDeep ? divedWith : inUse);
  }

  /** The way between two depths on one gas. */
  stretch(fromM: number, toM: number, gas: Gas): Stretch {
    const minutes = Math.abs(fromM - toM) / this.limits.plan.ascentMMin;
    return stretchOf({ fromM, toM, minutes, gas }, this.site, this.sharesAfter(minutes));
  }

  /** The way from one depth up to another, in a new stretch wherever a better gas may be breathed. */
  climb(fromM: number, toM: number, gas: Gas): readonly Stretch[] {
    const way: Stretch[] = [];
    let depthM = fromM;
    let breathed = gas;
    for (const switchM of this.switchDepths) {
      if (switchM >= depthM - SAME_DEPTH_M || switchM <= toM + SAME_DEPTH_M) continue;
      const better = this.bestGas(switchM, breathed);
      if (better === breathed) continue;
      way.push(this.stretch(depthM, switchM, breathed));
      depthM = switchM;
      breathed = better;
    }
    way.push(this.stretch(depthM, toM, breathed));
    return way;
  }

  /** The way up to a stop level from the one below it, on the gas breathed there. */
  upTo(level: number, gas: Gas): readonly Stretch[] {
    let known = this.fromLevels.get(gas);
    if (!known) this.fromLevels.set(gas, (known = []));
    const { plan } = this.limits;
    return (known[level] ??= this.climb(levelM(level + 1, plan), levelM(level, plan), gas) as Stretch[]);
  }
}

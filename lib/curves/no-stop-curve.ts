import { breathedAt } from '../ascent/breathed';
import { noStop } from '../ascent/no-stop';
import type { AscentSite } from '../ascent/plan/schedule';
import type { Gas } from '../physics/gas';
import type { Tissues } from '../tissue/tissues';
import { tissuesAfterChange } from './tissues-after-change';

export interface NoStopConditions {
  readonly site: AscentSite;
  /** What the diver holds on leaving the surface. */
  readonly tissues: Tissues;
  readonly gas: Gas;
  /** Gradient factor at the surface, 0–1: the high one of a pair. The low one has no say in a direct ascent. */
  readonly gf: number;
  /**
   * Rate of the way down, m/min. With one, minutes are counted from leaving the surface, way down included, as tables
   * count them; without, from an instant arrival at depth.
   */
  readonly descentMMin?: number | undefined;
}

/** No-stop time at each depth: one figure for each depth. */
export interface NoStopCurve {
  readonly depthM: Float64Array;
  /** Infinity where no limit would ever be reached (or, with helium, not within the search); 0 where one is passed on arrival. */
  readonly minutes: Float64Array;
  /** Compartment, 1–16, that ends it; 0 where none does. */
  readonly leader: Uint8Array;
}

/** The engine's no-stop time at each of some depths, m. */
export function noStopCurve(conditions: NoStopConditions, depthsM: ArrayLike<number>): NoStopCurve {
  const { site, gas, gf, descentMMin } = conditions;
  const depthM = Float64Array.from(depthsM);
  const minutes = new Float64Array(depthM.length);
  const leader = new Uint8Array(depthM.length);
  const load = { ...site, ...conditions.tissues, at: 0 };
  for (let i = 0; i < depthM.length; i += 1) {
    const deepM = depthM[i]!;
    const descentMin = descentMMin === undefined ? 0 : deepM / descentMMin;
    const there =
      descentMin === 0 ? load : { ...load, ...tissuesAfterChange(site, conditions.tissues, gas, 0, deepM, descentMin) };
    const left = noStop(there, breathedAt(site, gas, site.surfaceBar + deepM * site.barPerMetre), gf);
    minutes[i] = left.minutes === 0 ? 0 : descentMin + left.minutes;
    leader[i] = left.leader;
  }
  return { depthM, minutes, leader };
}

import { nitrogenFraction } from '../physics/gas';
import { COMPARTMENTS } from '../tissue/coefficients';
import type { Limits } from './limits';
import type { AscentSite, AscentStart } from './plan/schedule';

/**
 * Whether no tissue can come over the surface's limit on a direct way up: told without planning it. On the way up no more
 * of either gas is breathed than the most that is breathed of it here or on arriving where a carried gas is taken, so that
 * Haldane's solution for that is the most there can be; and what the surface tolerates is tolerated deeper. With helium the
 * strictest mixture there can be is taken. What it does not tell may be free all the same.
 */
export function surelyFree(
  site: AscentSite,
  { gradientFactors, plan, carried }: Limits,
): (start: AscentStart) => boolean {
  const { compartments, surfaceBar, barPerMetre, lungOffsetBar } = site;
  const { nitrogenA, nitrogenB, nitrogenK, heliumA, heliumB, heliumK } = compartments;
  const { high } = gradientFactors;
  const limitBar = (a: number, b: number) => surfaceBar + high * (a + surfaceBar / b - surfaceBar);
  const onNitrogen = nitrogenA.map((a, c) => limitBar(a, nitrogenB[c]!));
  const dryBar = (depthM: number) => surfaceBar + depthM * barPerMetre - lungOffsetBar;
  return ({ depthM, gas, nitrogenBar, heliumBar, at }) => {
    let nitrogenMostBar = dryBar(depthM) * nitrogenFraction(gas);
    let heliumMostBar = dryBar(depthM) * gas.he;
    for (const { gas: other, fromM } of carried) {
      const here = dryBar(Math.min(depthM, fromM));
      nitrogenMostBar = Math.max(nitrogenMostBar, here * nitrogenFraction(other));
      heliumMostBar = Math.max(heliumMostBar, here * other.he);
    }
    const minutes = depthM / plan.ascentMMin;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const n = nitrogenBar[at + c]!;
      const h = heliumBar[at + c]!;
      const nMost = n + Math.max(0, nitrogenMostBar - n) * -Math.expm1(-nitrogenK[c]! * minutes);
      if (h === 0 && heliumMostBar === 0) {
        if (nMost > onNitrogen[c]!) return false;
        continue;
      }
      const left = Math.exp(-heliumK[c]! * minutes);
      const hMost = h + Math.max(0, heliumMostBar - h) * (1 - left);
      // The strictest mixture is the one with most nitrogen and least helium, or helium alone.
      const share = (h * left) / (h * left + nMost);
      const a = Math.min(nitrogenA[c]! + (heliumA[c]! - nitrogenA[c]!) * share, heliumA[c]!);
      const b = Math.max(nitrogenB[c]! + (heliumB[c]! - nitrogenB[c]!) * share, heliumB[c]!);
      if (nMost + hMost > limitBar(a, b)) return false;
    }
    return true;
  };
}

import { nitrogenFraction } from '../../physics/gas';
import { COMPARTMENTS, type Compartments } from '../../tissue/coefficients';
import type { Closeness, Profile } from './simplify';

/**
 * How far the tissues of a profile with samples left out are from those of the whole profile: the largest difference of
 * inert gas tension (of nitrogen and of helium, added) in any compartment at any sample, bar, and the largest difference of depth, m.
 *
 * Gas exchange is linear in the pressure breathed: dΔ/dt = k·(ΔP_alv − Δ). So the difference of two timelines is the
 * timeline of the difference of their depths, begun with empty tissues, and one pass gives it exactly (Schreiner's
 * solution between samples).
 * @param kept indices of the samples left, the first and the last among them
 * @param giveUpAbove once the errors are beyond these, the rest is not looked at and what was found so far is told
 */
export function tensionErrorBar(
  { timeS, depthM, switches }: Profile,
  kept: Uint32Array,
  { barPerMetre, compartments }: { readonly barPerMetre: number; readonly compartments: Compartments },
  giveUpAbove: Closeness,
): { readonly depthErrorM: number; readonly tissueErrorBar: number } {
  const helium = switches.some(({ gas }) => gas.he > 0);
  const nitrogenBar = new Float64Array(COMPARTMENTS);
  const heliumBar = new Float64Array(COMPARTMENTS);
  const leftOf = leftAfterSteps(compartments);
  let nitrogenFractionNow = 0.79;
  let heliumFractionNow = 0;
  let nextSwitch = 0;
  let depthErrorM = 0;
  let tissueErrorBar = 0;
  let still = true;
  let line = 0;
  let offM = 0;
  for (let i = 1; i < timeS.length; i += 1) {
    while (nextSwitch < switches.length && switches[nextSwitch]!.timeS <= timeS[i - 1]!) {
      const { gas } = switches[nextSwitch]!;
      nitrogenFractionNow = nitrogenFraction(gas);
      heliumFractionNow = gas.he;
      nextSwitch += 1;
    }
    while (kept[line + 1]! < i) line += 1;
    const from = kept[line]!;
    const to = kept[line + 1]!;
    let nextOffM = 0;
    if (i !== to) {
      const part = (timeS[i]! - timeS[from]!) / (timeS[to]! - timeS[from]!);
      nextOffM = depthM[from]! + (depthM[to]! - depthM[from]!) * part - depthM[i]!;
    }
    depthErrorM = Math.max(depthErrorM, Math.abs(nextOffM));
    if (still && nextOffM === 0) continue;
    still = false;
    const left = leftOf(timeS[i]! - timeS[i - 1]!);
    const minutes = (timeS[i]! - timeS[i - 1]!) / 60;
    const startBar = offM * barPerMetre;
    const endBar = nextOffM * barPerMetre;
    carry(
      nitrogenBar,
      startBar * nitrogenFractionNow,
      endBar * nitrogenFractionNow,
      minutes,
      compartments.nitrogenK,
      left.nitrogen,
    );
    if (helium)
      carry(
        heliumBar,
        startBar * heliumFractionNow,
        endBar * heliumFractionNow,
        minutes,
        compartments.heliumK,
        left.helium,
      );
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const error = Math.abs(nitrogenBar[c]!) + Math.abs(heliumBar[c]!);
      if (error > tissueErrorBar) tissueErrorBar = error;
    }
    if (tissueErrorBar > giveUpAbove.tissueBar || depthErrorM > giveUpAbove.depthM) break;
    offM = nextOffM;
  }
  return { depthErrorM, tissueErrorBar };
}

function carry(
  tensions: Float64Array,
  startBar: number,
  endBar: number,
  minutes: number,
  k: Float64Array,
  left: Float64Array,
): void {
  const rate = (endBar - startBar) / minutes;
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const lag = rate / k[c]!;
    tensions[c] = endBar - lag + (tensions[c]! - startBar + lag) * left[c]!;
  }
}

/** e^(−k·t) of all compartments, kept for the last lengths of step: most steps of a record are alike. */
function leftAfterSteps({ nitrogenK, heliumK }: Compartments) {
  const known = new Map<number, { nitrogen: Float64Array; helium: Float64Array }>();
  return (stepS: number) => {
    const key = Math.round(stepS * 1e6);
    let left = known.get(key);
    if (!left) {
      if (known.size > 64) known.clear();
      left = {
        nitrogen: nitrogenK.map((k) => Math.exp((-k * stepS) / 60)),
        helium: heliumK.map((k) => Math.exp((-k * stepS) / 60)),
      };
      known.set(key, left);
    }
    return left;
  };
}

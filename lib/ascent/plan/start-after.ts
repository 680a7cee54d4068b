import type { GradientFactors } from '../../dive/dive';
import { COMPARTMENTS } from '../../tissue/coefficients';
import { lineAlong } from '../anchor';
import { breathedAt } from '../breathed';
import { GasPath } from '../gas-path';
import type { AscentSite, AscentStart } from './schedule';

/**
 * Takes where an ascent is planned from on, some minutes of staying there or of an even change to another depth, with the
 * anchor reached by then. Asked again and again: what it gives is written over the next time.
 */
export function startsAfter(site: AscentSite, gradientFactors: GradientFactors) {
  const path = new GasPath(site.compartments, site.surfaceBar);
  const { low, high } = gradientFactors;
  const nitrogenBar = new Float64Array(COMPARTMENTS);
  const heliumBar = new Float64Array(COMPARTMENTS);
  return (start: AscentStart, minutes: number, toM = start.depthM): AscentStart => {
    const { depthM, gas } = start;
    const from = breathedAt(site, gas, site.surfaceBar + depthM * site.barPerMetre);
    const to = breathedAt(site, gas, site.surfaceBar + toM * site.barPerMetre);
    const along = {
      nitrogenStartBar: from.nitrogenBar,
      nitrogenEndBar: to.nitrogenBar,
      heliumStartBar: from.heliumBar,
      heliumEndBar: to.heliumBar,
    };
    path.begin(start.nitrogenBar, start.heliumBar, start.at, 1, along, minutes);
    const anchorBar = start.anchorM * site.barPerMetre;
    const line = low < high ? lineAlong(path, gradientFactors, { bound: anchorBar > 0, anchorBar })! : undefined;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      nitrogenBar[c] = path.nitrogenAt(c, minutes);
      heliumBar[c] = path.heliumAt(c, minutes);
    }
    return {
      depthM: toM,
      gas,
      nitrogenBar,
      heliumBar,
      at: 0,
      anchorM: line ? line.anchorBar / site.barPerMetre : 0,
      stayedMin: toM === depthM ? (start.stayedMin ?? 0) + minutes : 0,
    };
  };
}

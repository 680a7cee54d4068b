import { COMPARTMENTS, type Compartments } from '../../tissue/coefficients';
import { breathedAt } from '../breathed';
import type { AscentPart, AscentSite } from './schedule';

/**
 * A piece of the way up with what every compartment needs to be carried along it. By Schreiner's solution a gap to the
 * breathed pressure, g = P − P_alv, becomes g·left − rise·trailing, where left = e^(−k·t) and trailing = (1 − left)/(k·t);
 * with no rise that is Haldane's.
 */
export interface Stretch {
  readonly part: AscentPart;
  readonly nitrogenStartBar: number;
  readonly nitrogenEndBar: number;
  readonly heliumStartBar: number;
  readonly heliumEndBar: number;
  readonly shares: Float64Array;
}

/** Shares of each compartment: left and trailing of nitrogen, left and trailing of helium. */
export const SHARES = 4;

/** Works out the shares for a time, and remembers the last: most climbs between stops take the same time. */
export function sharesOf({ nitrogenK, heliumK }: Compartments): (minutes: number) => Float64Array {
  let known = NaN;
  let shares = new Float64Array(0);
  return (minutes) => {
    if (minutes === known) return shares;
    known = minutes;
    shares = new Float64Array(COMPARTMENTS * SHARES);
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const nitrogenLeft = Math.exp(-nitrogenK[c]! * minutes);
      const heliumLeft = Math.exp(-heliumK[c]! * minutes);
      shares[c * SHARES] = nitrogenLeft;
      shares[c * SHARES + 1] = minutes > 0 ? (1 - nitrogenLeft) / (nitrogenK[c]! * minutes) : 1;
      shares[c * SHARES + 2] = heliumLeft;
      shares[c * SHARES + 3] = minutes > 0 ? (1 - heliumLeft) / (heliumK[c]! * minutes) : 1;
    }
    return shares;
  };
}

/** A stretch and, as `shares`, what `sharesOf` gives for its time. */
export function stretchOf(part: AscentPart, site: AscentSite, shares: Float64Array): Stretch {
  const start = breathedAt(site, part.gas, site.surfaceBar + part.fromM * site.barPerMetre);
  const end = breathedAt(site, part.gas, site.surfaceBar + part.toM * site.barPerMetre);
  return {
    part,
    nitrogenStartBar: start.nitrogenBar,
    nitrogenEndBar: end.nitrogenBar,
    heliumStartBar: start.heliumBar,
    heliumEndBar: end.heliumBar,
    shares,
  };
}

import type { AscentSite } from '@/lib/ascent/plan/schedule';
import { COMPARTMENTS, type Compartments } from '@/lib/tissue/coefficients';

/*
 * A model and a place in round numbers, so that results can be worked by hand: sixteen equal compartments of 10 min that
 * tolerate twice the ambient pressure, a surface of 1 bar, 10 m to the bar, dry lungs.
 */

const same = (value: number) => new Float64Array(COMPARTMENTS).fill(value);

const TWO_TO_ONE: Compartments = {
  nitrogenHalfTimeMin: same(10),
  nitrogenK: same(Math.LN2 / 10),
  nitrogenA: same(0),
  nitrogenB: same(0.5),
  heliumHalfTimeMin: same(5),
  heliumK: same(Math.LN2 / 5),
  heliumA: same(0),
  heliumB: same(0.5),
};

export const PLAIN_SITE: AscentSite = { compartments: TWO_TO_ONE, surfaceBar: 1, barPerMetre: 0.1, lungOffsetBar: 0 };

/** Nothing but nitrogen: its pressure in dry lungs is the ambient pressure. */
export const ALL_NITROGEN = { o2: 0, he: 0 };

/** What an ascent function takes: every compartment at the same two tensions, bar. */
export function plainLoad(nitrogenBar: number, heliumBar = 0) {
  return { ...PLAIN_SITE, nitrogenBar: same(nitrogenBar), heliumBar: same(heliumBar), at: 0 };
}

import { AIR, nitrogenFraction } from '../physics/gas';
import { alveolarInertBar } from './alveolar';
import { COMPARTMENTS, type Compartments } from './coefficients';
import { haldane } from './loading';

/** The gas dissolved in the sixteen compartments: tension of each gas, bar. */
export interface Tissues {
  readonly nitrogenBar: Float64Array;
  readonly heliumBar: Float64Array;
}

/** Sixteen compartments that hold nothing, to be filled. */
export function emptyTissues(): Tissues {
  return { nitrogenBar: new Float64Array(COMPARTMENTS), heliumBar: new Float64Array(COMPARTMENTS) };
}

/** Settled on air at an ambient pressure, bar: where a diver starts who has lived there for days. */
export function tissuesSettledOnAir(ambientBar: number, respiratoryQuotient: number): Tissues {
  const tissues = emptyTissues();
  tissues.nitrogenBar.fill(alveolarInertBar(ambientBar, nitrogenFraction(AIR), respiratoryQuotient));
  return tissues;
}

/** The tissues after some minutes at one ambient pressure (bar) with given alveolar pressures, as new tissues. */
export function tissuesAfter(
  tissues: Tissues,
  compartments: Compartments,
  alveolar: { readonly nitrogenBar: number; readonly heliumBar: number },
  minutes: number,
): Tissues {
  const { nitrogenK, heliumK } = compartments;
  return {
    nitrogenBar: tissues.nitrogenBar.map((p, i) => haldane(p, alveolar.nitrogenBar, nitrogenK[i]!, minutes)),
    heliumBar: tissues.heliumBar.map((p, i) => haldane(p, alveolar.heliumBar, heliumK[i]!, minutes)),
  };
}

import { breathedAt } from '@/lib/ascent/breathed';
import { coefficientsOf, gradientFactorAt } from '@/lib/ascent/ceiling';
import { loadAt } from '@/lib/ascent/figures';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { limitBar } from '@/lib/tissue/limit';
import type { Scene } from './scene';

/** One compartment in the chase: where it is and what it tolerates, bar. */
export interface CompartmentState {
  /** 1–16. */
  readonly number: number;
  /** For nitrogen. */
  readonly halfTimeMin: number;
  readonly nitrogenBar: number;
  readonly heliumBar: number;
  /** Both gases together. */
  readonly tensionBar: number;
  /** Tolerated at the present depth and at the surface, gradient factors counted. */
  readonly limitNowBar: number;
  readonly limitAtSurfaceBar: number;
}

/** The sixteen compartments at one sample. */
export function compartmentStatesAt({ timeline, figures, dive }: Scene, sample: number): CompartmentState[] {
  const load = loadAt(timeline, sample);
  const { gradientFactors } = dive.settings;
  const gfNow = gradientFactorAt(timeline.depthM[sample]!, figures.anchorM[sample]!, gradientFactors);
  return Array.from({ length: COMPARTMENTS }, (_, c) => {
    const { a, b } = coefficientsOf(load, c);
    const nitrogenBar = timeline.nitrogenBar[load.at + c]!;
    const heliumBar = timeline.heliumBar[load.at + c]!;
    return {
      number: c + 1,
      halfTimeMin: timeline.compartments.nitrogenHalfTimeMin[c]!,
      nitrogenBar,
      heliumBar,
      tensionBar: nitrogenBar + heliumBar,
      limitNowBar: limitBar(a, b, gfNow, timeline.ambientBar[sample]!),
      limitAtSurfaceBar: limitBar(a, b, gradientFactors.high, timeline.surfaceBar),
    };
  });
}

export const isPastSurfaceLimit = (state: CompartmentState): boolean => state.tensionBar > state.limitAtSurfaceBar;

/** The lowest and the highest pressure a dive has to show, bar: tensions and gas breathed; water, and what it lets be tolerated. */
export function pressureRange({ timeline, dive }: Scene): {
  readonly lowestBar: number;
  readonly deepestBar: number;
  readonly highestBar: number;
} {
  const { legs, surfaceBar, barPerMetre, gases, nitrogenBar, heliumBar, compartments } = timeline;
  let deepestBar = surfaceBar;
  let lowestBar = Infinity;
  for (const leg of legs) {
    for (const depthM of [leg.fromM, leg.toM]) {
      const ambientBar = surfaceBar + depthM * barPerMetre;
      const breathed = breathedAt(timeline, gases[leg.gas]!, ambientBar);
      deepestBar = Math.max(deepestBar, ambientBar);
      lowestBar = Math.min(lowestBar, breathed.nitrogenBar + breathed.heliumBar);
    }
  }
  for (let c = 0; c < COMPARTMENTS; c += 1) lowestBar = Math.min(lowestBar, nitrogenBar[c]! + heliumBar[c]!);
  const gf = dive.settings.gradientFactors.high;
  const { nitrogenA: a, nitrogenB: b } = compartments;
  const highestBar = Math.max(limitBar(a[15]!, b[15]!, gf, deepestBar), limitBar(a[0]!, b[0]!, gf, surfaceBar));
  return { lowestBar, deepestBar, highestBar };
}

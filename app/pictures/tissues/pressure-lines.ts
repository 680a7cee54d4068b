import { coefficientsOf, gradientFactorAt } from '@/lib/ascent/ceiling';
import { loadAt } from '@/lib/ascent/figures';
import { limitBar } from '@/lib/tissue/limit';
import type { Scene } from '../scene';

/** What a compartment may hold at each ambient pressure, under one gradient factor or along the line from low to high. */
export interface Tolerance {
  /** Tension tolerated at an ambient pressure, both bar. */
  readonly underGf: (gf: number, ambientBar: number) => number;
  readonly inForce: (ambientBar: number) => number;
}

/** The tolerances of a compartment (1–16) with the gases it holds, and the first stop it has, at one sample. */
export function toleranceAt({ timeline, figures, dive }: Scene, sample: number, compartment: number): Tolerance {
  const { a, b } = coefficientsOf(loadAt(timeline, sample), compartment - 1);
  const { gradientFactors } = dive.settings;
  const { surfaceBar, barPerMetre } = timeline;
  const anchorM = figures.anchorM[sample]!;
  const underGf = (gf: number, ambientBar: number) => limitBar(a, b, gf, ambientBar);
  return {
    underGf,
    inForce: (ambientBar) =>
      underGf(gradientFactorAt((ambientBar - surfaceBar) / barPerMetre, anchorM, gradientFactors), ambientBar),
  };
}

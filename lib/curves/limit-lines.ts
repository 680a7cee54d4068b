import { gradientFactorAt } from '../ascent/ceiling';
import type { AscentSite } from '../ascent/plan/schedule';
import type { GradientFactors } from '../dive/dive';
import { COMPARTMENTS } from '../tissue/coefficients';
import { limitBar, mixedCoefficient, mValueBar } from '../tissue/limit';

/** A point of a pressure–pressure diagram, bar absolute: ambient pressure across, tension up. */
export interface PressurePoint {
  readonly ambientBar: number;
  readonly tensionBar: number;
}

/** A straight line by its ends. */
type StraightLine = readonly [PressurePoint, PressurePoint];

/** What one compartment tolerates, as lines and as figures for a table. */
export interface CompartmentLimits {
  /** 1–16. */
  readonly compartment: number;
  readonly nitrogenHalfTimeMin: number;
  readonly heliumHalfTimeMin: number;
  /** Coefficients for the mixture asked for: a in bar, b without unit. */
  readonly a: number;
  readonly b: number;
  /** The model's own limit, M = a + p/b, and its slope 1/b. */
  readonly mLine: StraightLine;
  readonly slope: number;
  /** Under the low and the high gradient factor alone. */
  readonly lowLine: StraightLine;
  readonly highLine: StraightLine;
  /** From low at the first stop to high at the surface: a curve, from the surface down. Without a first stop, empty. */
  readonly fromLowToHigh: readonly PressurePoint[];
  /** Tolerated tension at the surface by the model, under low and under high, bar. */
  readonly surfacingBar: { readonly model: number; readonly low: number; readonly high: number };
}

export interface LimitLinesRequest {
  readonly site: Pick<AscentSite, 'compartments' | 'surfaceBar' | 'barPerMetre'>;
  readonly gradientFactors: GradientFactors;
  /** Share of helium in the inert gas a compartment holds, 0–1. */
  readonly heliumShare: number;
  /** Where the line from low to high begins, m; 0 for none. */
  readonly anchorM: number;
  /** The lines reach from no pressure at all to this depth, m. */
  readonly deepestM: number;
}

const CURVE_STEPS = 24;

/** The limits of all sixteen compartments as lines. The line on which tension equals ambient pressure is the diagonal. */
export function limitLines({
  site,
  gradientFactors,
  heliumShare,
  anchorM,
  deepestM,
}: LimitLinesRequest): CompartmentLimits[] {
  if (!(heliumShare >= 0 && heliumShare <= 1)) throw new RangeError(`a share of helium is 0 to 1, not ${heliumShare}`);
  const { compartments, surfaceBar, barPerMetre } = site;
  const { nitrogenA, nitrogenB, heliumA, heliumB, nitrogenHalfTimeMin, heliumHalfTimeMin } = compartments;
  const deepestBar = surfaceBar + deepestM * barPerMetre;
  return Array.from({ length: COMPARTMENTS }, (_, c) => {
    const a = mixedCoefficient(1 - heliumShare, heliumShare, nitrogenA[c]!, heliumA[c]!);
    const b = mixedCoefficient(1 - heliumShare, heliumShare, nitrogenB[c]!, heliumB[c]!);
    const pointUnder = (gf: number, ambientBar: number): PressurePoint => ({
      ambientBar,
      tensionBar: limitBar(a, b, gf, ambientBar),
    });
    const lineUnder = (gf: number): StraightLine => [pointUnder(gf, 0), pointUnder(gf, deepestBar)];
    const curve =
      anchorM > 0 ? Array.from({ length: CURVE_STEPS + 1 }, (_point, i) => (anchorM * i) / CURVE_STEPS) : [];
    return {
      compartment: c + 1,
      nitrogenHalfTimeMin: nitrogenHalfTimeMin[c]!,
      heliumHalfTimeMin: heliumHalfTimeMin[c]!,
      a,
      b,
      mLine: lineUnder(1),
      slope: 1 / b,
      lowLine: lineUnder(gradientFactors.low),
      highLine: lineUnder(gradientFactors.high),
      fromLowToHigh: curve.map((depthM) =>
        pointUnder(gradientFactorAt(depthM, anchorM, gradientFactors), surfaceBar + depthM * barPerMetre),
      ),
      surfacingBar: {
        model: mValueBar(a, b, surfaceBar),
        low: limitBar(a, b, gradientFactors.low, surfaceBar),
        high: limitBar(a, b, gradientFactors.high, surfaceBar),
      },
    };
  });
}

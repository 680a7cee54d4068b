import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';
import { seeded } from '../quantity/seeded';

/** How far each value that nobody knows exactly may be off, up or down. */
export interface Variation {
  /** Half-times, as a share of each: 0.1 is ±10%. */
  readonly halfTimes: number;
  /** Limits, as a share of the overpressure they allow (M − p), as a gradient factor takes its share: 0.1 is ±10%. */
  readonly limits: number;
  /** What a depth gauge may be off, m. */
  readonly depthM: number;
  /** What the tissues hold at the start, as a share of it. */
  readonly start: number;
  /** Samples besides the corners, in which every compartment is off by its own amount. */
  readonly samples: number;
  readonly seed: number;
}

/** Ten per cent on what was fitted, half a metre on the gauge, five per cent at the start: a teaching choice, not a measurement. */
export const USUAL_VARIATION: Variation = {
  halfTimes: 0.1,
  limits: 0.1,
  depthM: 0.5,
  start: 0.05,
  samples: 48,
  seed: 1908,
};

/** One way it might really be: factors for each compartment, and what is added to every depth under water. */
export interface Variant {
  readonly halfTimes: Float64Array;
  readonly limits: Float64Array;
  readonly addedDepthM: number;
  readonly start: number;
}

/**
 * The ways to try: first things as they are said to be, then every corner (all half-times longer or shorter, all
 * limits higher or lower, the gauge out one way or the other, more or less gas at the start), then seeded samples between.
 * Throws RangeError for a share that is not 0 to less than 1, or a depth or number of samples below 0.
 */
export function variantsOf({ halfTimes, limits, depthM, start, samples, seed }: Variation): Variant[] {
  for (const share of [halfTimes, limits, start]) {
    if (!(share >= 0 && share < 1))
      throw new RangeError(`a share that something may be off is 0 to less than 1, not ${share}`);
  }
  if (!(depthM >= 0) || !(samples >= 0))
    throw new RangeError('a depth that a gauge may be off, and a number of samples, are 0 or more');
  const variants: Variant[] = [
    variant(
      () => 1,
      () => 1,
      0,
      1,
    ),
  ];
  for (let corner = 0; corner < 16; corner += 1) {
    const side = (bit: number) => (corner & (1 << bit) ? 1 : -1);
    variants.push(
      variant(
        () => 1 + side(0) * halfTimes,
        () => 1 + side(1) * limits,
        side(2) * depthM,
        1 + side(3) * start,
      ),
    );
  }
  const random = seeded(seed);
  const either = () => 2 * random() - 1;
  for (let sample = 0; sample < samples; sample += 1) {
    variants.push(
      variant(
        () => 1 + either() * halfTimes,
        () => 1 + either() * limits,
        either() * depthM,
        1 + either() * start,
      ),
    );
  }
  return variants;
}

function variant(halfTimeFactor: () => number, limitFactor: () => number, addedDepthM: number, start: number): Variant {
  const each = (factor: () => number) => Float64Array.from({ length: COMPARTMENTS }, factor);
  return { halfTimes: each(halfTimeFactor), limits: each(limitFactor), addedDepthM, start };
}

/** Compartments with half-times and allowed overpressures off by a variant's factors: M − p becomes f·(M − p). */
export function variedCompartments(from: Compartments, { halfTimes, limits }: Variant): Compartments {
  const longer = (halfTimesMin: Float64Array) => halfTimesMin.map((t, c) => t * halfTimes[c]!);
  const slower = (k: Float64Array) => k.map((one, c) => one / halfTimes[c]!);
  const wider = (a: Float64Array) => a.map((one, c) => one * limits[c]!);
  const steeper = (b: Float64Array) => b.map((one, c) => 1 / (1 + limits[c]! * (1 / one - 1)));
  return {
    nitrogenHalfTimeMin: longer(from.nitrogenHalfTimeMin),
    nitrogenK: slower(from.nitrogenK),
    nitrogenA: wider(from.nitrogenA),
    nitrogenB: steeper(from.nitrogenB),
    heliumHalfTimeMin: longer(from.heliumHalfTimeMin),
    heliumK: slower(from.heliumK),
    heliumA: wider(from.heliumA),
    heliumB: steeper(from.heliumB),
  };
}

import { gradientFactorAt } from '@/lib/ascent/ceiling';
import { supersaturationOf } from '@/lib/ascent/supersaturation';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { mValueBar } from '@/lib/tissue/limit';
import type { Scene } from '../scene';

/** Where a supersaturation is looked at: at the depth the diver is at, or as if at the surface this instant. */
export type Basis = 'surfacing' | 'now';

/** Supersaturations of a dive, one set for each pixel column of a picture. */
export interface SupersaturationColumns {
  /** Sixteen for each column, from 16 · column on; 1 is the model's own limit, below 0 a compartment takes gas up. */
  readonly values: Float32Array;
  /** The largest of the sixteen, and the compartment (1–16) that has it. */
  readonly most: Float32Array;
  readonly leader: Uint8Array;
  /** The gradient factor each column is held to. */
  readonly limit: Float32Array;
}

const worked = new WeakMap<Int32Array, Partial<Record<Basis, SupersaturationColumns>>>();

/** The supersaturations at the columns of a picture; worked out once where several pictures share the columns. */
export function supersaturationColumns(scene: Scene, columns: Int32Array, basis: Basis): SupersaturationColumns {
  const known = worked.get(columns) ?? {};
  worked.set(columns, known);
  return (known[basis] ??= workedOut(scene, columns, basis));
}

function workedOut({ timeline, figures, dive }: Scene, columns: Int32Array, basis: Basis): SupersaturationColumns {
  const { length } = columns;
  const values = new Float32Array(length * COMPARTMENTS);
  const most = new Float32Array(length);
  const leader = new Uint8Array(length);
  const limit = new Float32Array(length);
  const { gradientFactors } = dive.settings;
  const { surfaceBar, ambientBar, depthM, nitrogenBar, hasHelium } = timeline;
  const { nitrogenA, nitrogenB } = timeline.compartments;
  const load = { ...timeline, at: 0 };
  for (let column = 0; column < length; column += 1) {
    const sample = columns[column]!;
    const around = basis === 'now' ? ambientBar[sample]! : surfaceBar;
    const to = column * COMPARTMENTS;
    const from = sample * COMPARTMENTS;
    load.at = from;
    let largest = -Infinity;
    let leads = 0;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      // With nitrogen alone a and b stand still, and need not be averaged.
      const own = hasHelium
        ? supersaturationOf(load, c, around)
        : (nitrogenBar[from + c]! - around) / (mValueBar(nitrogenA[c]!, nitrogenB[c]!, around) - around);
      values[to + c] = own;
      if (own > largest) {
        largest = own;
        leads = c + 1;
      }
    }
    most[column] = largest;
    leader[column] = leads;
    limit[column] = limitAt(depthM[sample]!, figures.anchorM[sample]!, gradientFactors, basis);
  }
  return { values, most, leader, limit };
}

/** The gradient factor a diver is held to: at the surface the high one, else the one in force at the depth. */
export function limitAt(
  depthM: number,
  anchorM: number,
  gradientFactors: Scene['dive']['settings']['gradientFactors'],
  basis: Basis,
): number {
  return basis === 'surfacing' ? gradientFactors.high : gradientFactorAt(depthM, anchorM, gradientFactors);
}

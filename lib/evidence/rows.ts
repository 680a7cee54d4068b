import type { Compartments, FirstCompartment } from '../tissue/coefficients';
import type { Engine } from './engine';

/** Where a compartment, by its published name, sits in the engine's sixteen. */
export interface Row {
  readonly first: FirstCompartment;
  readonly index: number;
}

/** Where a compartment of a published table lies in the engine: `1b` and `1` are both the first of their sets. */
export function rowOf(compartment: string): Row {
  return { first: compartment === '1' ? '1' : '1b', index: Number.parseInt(compartment, 10) - 1 };
}

/** One compartment's coefficients as the engine holds them. */
export function coefficientsAt(engine: Engine, variant: 'A' | 'B' | 'C', compartment: string) {
  const { first, index } = rowOf(compartment);
  const all: Compartments = engine.compartments(variant, first);
  return {
    nitrogen: { halfTimeMin: all.nitrogenHalfTimeMin[index]!, a: all.nitrogenA[index]!, b: all.nitrogenB[index]! },
    helium: { halfTimeMin: all.heliumHalfTimeMin[index]!, a: all.heliumA[index]!, b: all.heliumB[index]! },
  };
}

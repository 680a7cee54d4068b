import published from '../../content/published/zhl16.json';

/** How many compartments every variant has. */
export const COMPARTMENTS = 16;

export type Variant = 'A' | 'B' | 'C';
/** Which fast compartment comes first: 1 (4.0 min nitrogen) or 1b (5.0 min). */
export type FirstCompartment = '1' | '1b';

/** Sixteen of each: half-times in minutes, k = ln 2 / half-time in 1/min, a in bar, b without unit. */
export interface Compartments {
  readonly nitrogenHalfTimeMin: Float64Array;
  readonly nitrogenK: Float64Array;
  readonly nitrogenA: Float64Array;
  readonly nitrogenB: Float64Array;
  readonly heliumHalfTimeMin: Float64Array;
  readonly heliumK: Float64Array;
  readonly heliumA: Float64Array;
  readonly heliumB: Float64Array;
}

const known = new Map<string, Compartments>();

/** The published coefficients of a ZH-L16 variant; source and standing of each value are in the data file. */
export function compartments(variant: Variant, first: FirstCompartment): Compartments {
  const name = variant + first;
  const before = known.get(name);
  if (before) return before;
  const left = first === '1' ? '1b' : '1';
  const rows = published.values.filter((row) => row.compartment !== left);
  const column = (pick: (row: (typeof rows)[number]) => number) => Float64Array.from(rows, pick);
  const nitrogenHalfTimeMin = column((row) => row.nitrogen.halfTimeMin);
  const heliumHalfTimeMin = column((row) => row.helium.halfTimeMin);
  const made: Compartments = {
    nitrogenHalfTimeMin,
    nitrogenK: nitrogenHalfTimeMin.map((t) => Math.LN2 / t),
    nitrogenA: column((row) => row.nitrogen[`a${variant}`]),
    nitrogenB: column((row) => row.nitrogen.b),
    heliumHalfTimeMin,
    heliumK: heliumHalfTimeMin.map((t) => Math.LN2 / t),
    heliumA: column((row) => row.helium.a),
    heliumB: column((row) => row.helium.b),
  };
  known.set(name, made);
  return made;
}

/** The sixteen, from 0. */
export const ALL_COMPARTMENTS: readonly number[] = Array.from({ length: COMPARTMENTS }, (_, c) => c);

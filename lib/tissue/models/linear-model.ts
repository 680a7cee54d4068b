import type { LimitModel } from './limit-model';

/** What a data file in `content/models` says of a model, as far as the model needs it. */
export interface ModelAbout {
  readonly id: string;
  readonly name: string;
  readonly year: number;
  readonly source: string;
  readonly conventions: {
    readonly airNitrogen: { readonly value: number };
    readonly lungOffsetBar: { readonly value: number };
  };
}

/** A compartment whose limit is a line: tolerated tension = intercept + slope · ambient pressure, bar. */
export interface LinearCompartment {
  readonly name: string;
  readonly halfTimeMin: number;
  readonly interceptBar: number;
  readonly slope: number;
}

/** A model with straight limits, as all have been from Haldane's ratio (no intercept) to Bühlmann's a + p/b. */
export function linearModel(about: ModelAbout, rows: readonly LinearCompartment[]): LimitModel {
  const { id, name, year, source, conventions } = about;
  return {
    id,
    name,
    year,
    source,
    gases: ['nitrogen'],
    compartments: rows.map((row) => ({ name: row.name, halfTimeMin: row.halfTimeMin })),
    toleratedTensionBar: (compartment, ambientBar) =>
      rows[compartment]!.interceptBar + rows[compartment]!.slope * ambientBar,
    toleratedAmbientBar: (compartment, tensionBar) =>
      (tensionBar - rows[compartment]!.interceptBar) / rows[compartment]!.slope,
    conventions: { airNitrogen: conventions.airNitrogen.value, lungOffsetBar: conventions.lungOffsetBar.value },
  };
}

/** Choices a model's makers made about pressures: they move its figures as much as its constants do. */
export interface Conventions {
  /** Fraction of nitrogen taken for air, 0–1. */
  readonly airNitrogen: number;
  /** Ambient pressure that is not breathed gas (water vapour), bar; 0 where the lungs are taken as dry. */
  readonly lungOffsetBar: number;
}

interface ModelCompartment {
  /** As its makers number it. */
  readonly name: string;
  readonly halfTimeMin: number;
}

/**
 * A model of what tissues tolerate: compartments that fill by halves, each with a limit. On nitrogen alone, so that models
 * of any age can be laid side by side. Compartments are told by their place in the list, from 0; pressures are absolute.
 */
export interface LimitModel {
  readonly id: string;
  readonly name: string;
  readonly year: number;
  readonly source: string;
  readonly gases: readonly ['nitrogen'];
  readonly compartments: readonly ModelCompartment[];
  /** Tension a compartment tolerates at an ambient pressure, bar. */
  readonly toleratedTensionBar: (compartment: number, ambientBar: number) => number;
  /** Lowest ambient pressure that tolerates a compartment's tension, bar; it may be below any real pressure. */
  readonly toleratedAmbientBar: (compartment: number, tensionBar: number) => number;
  readonly conventions: Conventions;
}

/** The same model under other conventions, to tell how much of its figures they are. */
export function withConventions(model: LimitModel, conventions: Partial<Conventions>): LimitModel {
  return { ...model, conventions: { ...model.conventions, ...conventions } };
}

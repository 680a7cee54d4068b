import type { Obtained } from '../../content/published/schema';

/**
 * The answer to "why?" for one reading, as plain data: a chain of steps from what is known to what is shown. Values are
 * kept at full precision in the model's units; printing them is the screen's work. Words carry no numbers with units, so
 * that they read alike in metric and imperial.
 */
export interface Working {
  readonly reading: string;
  readonly title: string;
  /** The compartment that sets the reading, 1–16, where one does. */
  readonly compartment?: number;
  readonly answer: Answer;
  /** What decides it, told in figures before the answer: "2.64 bar held, 1.44 bar tolerated". */
  readonly deciding?: readonly Deciding[];
  /** In order: a step takes values from earlier ones only, and the last one yields the reading. */
  readonly steps: readonly WorkingStep[];
  readonly table?: WorkingTable;
  readonly search?: Search;
  /** What the reader must know to take the working rightly. */
  readonly cautions?: readonly string[];
}

/** Unit of a quantity; '' for a fraction or a plain number, `units` those of pulmonary oxygen dose. */
export type Unit =
  | ''
  | 'bar'
  | 'm'
  | 's'
  | 'min'
  | 'h'
  | 'm/min'
  | 'bar/m'
  | 'bar/min'
  | '1/min'
  | '1/bar'
  | 'g/L'
  | 'g/mol'
  | 'K'
  | 'bar·L/(mol·K)'
  | 'units';

export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
}

/** What is shown. The value may be infinite (a time that never ends), never absent. */
interface Answer extends Quantity {
  /** One sentence, without figures. */
  readonly text: string;
  /** Where it holds: a stop's depth. */
  readonly at?: Quantity;
}

/** A step whose result decides the answer, and a word for what it is. */
export interface Deciding {
  readonly step: StepId;
  readonly word: string;
}

/** Symbols in an expression: letters, then subscripts parted by `_`, as in `P_alv_N2_3`. One symbol, one meaning, throughout a working. */
export type SymbolName = string;

export type StepId = `step:${string}`;

export interface WorkingStep {
  readonly id: StepId;
  /** What the step yields, as a noun. */
  readonly title: string;
  /** A plain sentence. */
  readonly why: string;
  /** mathjs syntax, in the symbols of `values` alone. */
  readonly expression: string;
  /** The symbol of what it yields. */
  readonly symbol: SymbolName;
  readonly values: Readonly<Record<SymbolName, WorkingValue>>;
  readonly result: Quantity;
  readonly source: string;
  /** Steps of one group belong together and may be folded away: `history` tells how the tension got to where it is. */
  readonly group?: 'history';
}

/**
 * What a value rests on when no earlier step gives it: the dive as it went, a setting, a published figure, common practice
 * without a source, or a search where no formula leads to it.
 */
type Origin = 'dive' | 'setting' | 'published' | 'common practice' | 'search';

export interface WorkingValue extends Quantity {
  readonly meaning: string;
  readonly from: Origin | StepId;
  /** Whether a learner may put another number in its place. */
  readonly changeable: boolean;
  /** The numbers that make sense in its place, from and to, in its unit. */
  readonly within?: readonly [number, number];
  /** How a published figure was come by. */
  readonly obtained?: Obtained;
  /** Where it holds: a stop's depth. */
  readonly at?: Quantity;
}

/** The same figures for all sixteen compartments, so that one sees why this compartment and not its neighbours. */
export interface WorkingTable {
  readonly caption: string;
  readonly columns: readonly { readonly title: string; readonly unit: Unit }[];
  readonly rows: readonly (readonly (number | string)[])[];
  /** Index of the row the reading comes from. */
  readonly marked?: number;
}

/**
 * How a value was found that no formula gives: the least `symbol`, in minutes from `fromMin` on, at which the step `until`
 * no longer yields less than 0; `horizonMin` if there is none up to there.
 */
export interface Search {
  readonly symbol: SymbolName;
  readonly until: StepId;
  readonly fromMin: number;
  readonly horizonMin: number;
  /** How far the search goes at a time, min; 1 where left out. */
  readonly stepMin?: number;
}

/** A value by the symbol it has in a working, to be put into the next step. */
export interface Named {
  readonly symbol: SymbolName;
  readonly value: WorkingValue;
}

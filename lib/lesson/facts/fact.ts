import type { MeasureId } from '../../sayings/measures';
import type { Dimension } from '../expression/dimension';
import type { DiveSpan } from './dive-spans';
import type { View } from '../questions/subject';

/** What a fact's parenthesis holds. A depth, an altitude and a pressure are amounts; the others plain numbers. */
export type ParameterKind = 'compartment' | 'depth' | 'altitude' | 'pressure' | 'cylinder' | 'event';

/** Why a fact has no value here, to be read by a person; thrown by what works it out, caught where it is asked. */
export class NoValue extends Error {}

interface FactBase {
  readonly name: string;
  readonly dimension: Dimension;
  readonly parameters?: readonly ParameterKind[];
  /** What it is, in one line, for the table of facts. */
  readonly meaning: string;
  /** The same as a noun, to be put into a sentence: "your greatest depth". `{1}` stands for the first argument. */
  readonly noun: string;
  /** How it is printed unless told otherwise; the dimension's usual form when left out. */
  readonly format?: string;
  /** The reading it is, if it is one: it is rounded the same way, whatever form it is printed in. */
  readonly measure?: MeasureId;
}

/** It has a value at every moment of a script. */
export interface MomentFact extends FactBase {
  readonly of: 'moment';
  /** Too dear to be worked out at every moment of a dive. */
  readonly dear?: true;
  value(view: View, sample: number, values: readonly number[]): number;
}

/** It has one value for each dive of a script. */
export interface DiveFact extends FactBase {
  readonly of: 'dive';
  value(view: View, span: DiveSpan, values: readonly number[], event: string): number;
}

/** It follows from the script's settings. */
export interface SettingFact extends FactBase {
  readonly of: 'settings';
  value(view: View, values: readonly number[]): number;
}

export type Fact = MomentFact | DiveFact | SettingFact;

/** Facts that are shares are told in percent. */
export const PERCENT = 100;

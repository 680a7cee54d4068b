import type { Dimension } from './dimension';
import type { Subject, View } from '../questions/subject';
import type { Work } from './work';

/** A number in an expression with what it measures. */
export interface Amount {
  readonly value: number;
  readonly dimension: Dimension;
}

/** A fact that an expression read, and what it came to. */
export interface FactRead {
  readonly name: string;
  readonly arguments: readonly number[];
  readonly event: string;
  /** Of which dive, and by whom: the model or a unit. */
  readonly view: View;
  /** Which dive of the day, from 1; the last when undefined. */
  readonly dive: number | undefined;
  /** s since the script began; undefined for what is so of a whole dive, or an extreme. */
  readonly atS: number | undefined;
  readonly dimension: Dimension;
  readonly value: number;
}

/** What an expression may speak of. */
export interface World {
  /** What facts without a script's name are about. */
  readonly subject: Subject;
  /** The other scripts, by name; undefined for a name there is not. */
  readonly script: (name: string) => Subject | undefined;
  readonly scriptNames: readonly string[];
  /** Values by name: those drawn for a question, and `given`, `answer` and `within` where a reply is chosen. */
  readonly values: ReadonlyMap<string, Amount>;
  /** What a learner has drawn, at a run time in minutes. */
  readonly drawn?: { readonly dimension: Dimension; readonly at: (minutes: number) => number } | undefined;
  /** Told of every fact that is read. */
  readonly noted?: ((read: FactRead) => void) | undefined;
  /** What may still be worked out, where that is bounded. */
  readonly work?: Work | undefined;
}

/** The same world with more values in it. */
export function withValues(world: World, values: Readonly<Record<string, Amount>>): World {
  return { ...world, values: new Map([...world.values, ...Object.entries(values)]) };
}

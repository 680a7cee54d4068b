import type { Dimension } from './dimension';
import type { Subject } from '../questions/subject';
import type { Work } from './work';

/** A number in an expression with what it measures. */
export interface Amount {
  readonly value: number;
  readonly dimension: Dimension;
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
  /** What may still be worked out, where that is bounded. */
  readonly work?: Work | undefined;
}

/** A world of one dive alone. */
export function worldOf(subject: Subject): World {
  return { subject, script: () => undefined, scriptNames: [], values: new Map() };
}

/** The same world with more values in it. */
export function withValues(world: World, values: Readonly<Record<string, Amount>>): World {
  return { ...world, values: new Map([...world.values, ...Object.entries(values)]) };
}

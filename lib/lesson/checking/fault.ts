/** Something wrong with a lesson, for whoever writes it. */
export interface LessonFault {
  /** Counted from 1. */
  readonly line: number;
  /** Where it is in the data; empty where that is not known. */
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly mend: string;
}

/** A fault before its line is known: where it is in the data. */
export interface PlacedFault {
  readonly path: readonly PropertyKey[];
  /** Lines below that place, inside a text of several lines. */
  readonly below?: number;
  readonly what: string;
  readonly mend: string;
}

/** `content/lessons/x.yaml:12: what is wrong. How to mend it.` */
export function printFault(file: string, { line, what, mend }: Pick<LessonFault, 'line' | 'what' | 'mend'>): string {
  return `${file}:${line}: ${what} ${mend}`;
}

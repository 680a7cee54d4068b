import type { Trouble } from './line';

/** Something to tell the writer of a script, and where. Lines and columns count from 1; the end is exclusive. */
export interface Notice {
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
  /** What is wrong. */
  readonly message: string;
  /** How to mend it. */
  readonly mend: string;
}

/** A trouble of the line at an index (from 0) as a notice. */
export function noticeAt(lineIndex: number, { span, what, mend }: Trouble): Notice {
  return {
    line: lineIndex + 1,
    column: span[0] + 1,
    endColumn: Math.max(span[1], span[0] + 1) + 1,
    message: what,
    mend,
  };
}

export function byPlace(one: Notice, other: Notice): number {
  return one.line - other.line || one.column - other.column;
}

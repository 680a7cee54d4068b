import type { Mend } from './mend';
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
  /** The same as changes of the script, any of which mends it. */
  readonly mends?: readonly Mend[];
  /** Other lines of which the very same is to be told. */
  readonly alsoOn?: readonly number[];
}

/** A trouble of the line at an index (from 0) as a notice. */
export function noticeAt(lineIndex: number, { span, what, mend, fixes }: Trouble): Notice {
  const line = lineIndex + 1;
  const mends = fixes?.map(({ span: [from, to], text, label = text }): Mend => ({
    label,
    edits: [{ line, column: from + 1, endColumn: to + 1, text }],
  }));
  return {
    line,
    column: span[0] + 1,
    endColumn: Math.max(span[1], span[0] + 1) + 1,
    message: what,
    mend,
    ...(mends && { mends }),
  };
}

/** Notices in the order of their places. */
export function inOrder(notices: readonly Notice[]): Notice[] {
  return [...notices].sort((one, other) => one.line - other.line || one.column - other.column);
}

/** Notices in the order of their places; those that say the very same are told once, at the first, and mended together. */
export function gathered(notices: readonly Notice[]): Notice[] {
  const told = new Map<string, Notice>();
  for (const notice of inOrder(notices)) {
    const same = `${notice.message}\n${notice.mend}`;
    const first = told.get(same);
    told.set(same, first ? together(first, notice) : notice);
  }
  return [...told.values()];
}

function together(first: Notice, other: Notice): Notice {
  const lines = first.alsoOn ?? [];
  const known = other.line === first.line || lines.includes(other.line);
  const mends = first.mends?.map((mend): Mend => {
    const same = other.mends?.find(({ label }) => label === mend.label);
    return same ? { ...mend, edits: [...mend.edits, ...same.edits] } : mend;
  });
  return { ...first, ...(mends && { mends }), ...(!known && { alsoOn: [...lines, other.line] }) };
}

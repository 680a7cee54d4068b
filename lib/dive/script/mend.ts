import { splitLines } from './split-lines';

/** A piece of one line and the text in its place, or the whole line taken out. Lines and columns count from 1. */
export type MendEdit =
  | { readonly line: number; readonly column: number; readonly endColumn: number; readonly text: string }
  | { readonly line: number; readonly remove: true };

/** A change of a script that a message offers. */
export interface Mend {
  /** What is written, or what is done, for a button. */
  readonly label: string;
  readonly edits: readonly MendEdit[];
}

/** A new line before another, or after it. */
export function insertedLine(line: number, text: string): MendEdit {
  return { line, column: 1, endColumn: 1, text: `${text}\n` };
}

/** The script with a mend made in it. Edits at one place come out in the order given. */
export function mended(script: string, { edits }: Mend): string {
  const lines: (string | undefined)[] = splitLines(script);
  const fromTheEnd = edits
    .map((edit, index) => ({ edit, index, column: 'remove' in edit ? 0 : edit.column }))
    .sort((one, other) => other.edit.line - one.edit.line || other.column - one.column || other.index - one.index);
  for (const { edit } of fromTheEnd) {
    const line = lines[edit.line - 1];
    if ('remove' in edit) lines[edit.line - 1] = undefined;
    else if (line !== undefined)
      lines[edit.line - 1] = line.slice(0, edit.column - 1) + edit.text + line.slice(edit.endColumn - 1);
  }
  return lines.filter((line) => line !== undefined).join('\n');
}

import { isMap, isScalar, isSeq, type Document, type LineCounter, type Node } from 'yaml';
import { checkLesson, type CheckOptions } from './checking/check-lesson';
import type { LessonFault, PlacedFault } from './checking/fault';
import { lessonSchema, type Lesson } from './lesson';
import { lessonDocument } from './lesson-document';
import { shapeFault } from './checking/shape-fault';

interface Faulty {
  readonly ok: false;
  readonly faults: readonly LessonFault[];
}

interface Shaped {
  readonly ok: true;
  readonly lesson: Lesson;
  /** Where in the text a fault stands. */
  readonly placed: (fault: PlacedFault) => LessonFault;
}

export type ReadLesson = { readonly ok: true; readonly lesson: Lesson } | Faulty;

/**
 * Reads a lesson from YAML. Never throws, whatever the text: what is wrong is told line by line with how to mend it.
 * A lesson from a stranger is safe to read: it is bounded in size, and nothing in it can run.
 */
export function readLesson(text: string, options: CheckOptions): ReadLesson {
  const read = readShape(text);
  if (!read.ok) return read;
  const faults = checkLesson(read.lesson, options);
  return faults.length > 0
    ? { ok: false, faults: inOrder(faults.map(read.placed)) }
    : { ok: true, lesson: read.lesson };
}

/** Reads a lesson as `readLesson` does, but for whether what it says is so: only whether it has the shape of one. */
export function readShape(text: string): Shaped | Faulty {
  const read = lessonDocument(text);
  if (!read.ok) return read;
  const { document, lines } = read;
  const plain = plainData(document);
  if (!plain.ok) return plain;
  const placed = (fault: PlacedFault): LessonFault => ({
    line: lineOf(document, lines, fault),
    path: fault.path.map((key) => (typeof key === 'symbol' ? key.toString() : key)),
    what: fault.what,
    mend: fault.mend,
  });
  const shaped = lessonSchema.safeParse(plain.data);
  return shaped.success
    ? { ok: true, lesson: shaped.data, placed }
    : { ok: false, faults: inOrder(shaped.error.issues.flatMap(shapeFault).map(placed)) };
}

function inOrder(faults: readonly LessonFault[]): LessonFault[] {
  return [...faults].sort((one, other) => one.line - other.line);
}

function plainData(document: Document.Parsed): { readonly ok: true; readonly data: unknown } | Faulty {
  try {
    return { ok: true, data: document.toJS({ maxAliasCount: 0 }) };
  } catch {
    const what = 'This lesson refers from one place to another with * or &.';
    return { ok: false, faults: [{ line: 1, path: [], what, mend: 'Write everything out where it is needed.' }] };
  }
}

/** The line of a place in the data, or of the nearest place above it that is written. */
function lineOf(document: Document.Parsed, lines: LineCounter, { path, below = 0 }: PlacedFault): number {
  let node: unknown = document.contents;
  let line = 1;
  for (const key of path) {
    const found = child(node, key);
    if (!found) break;
    line = lines.linePos(found.offset).line;
    node = found.node;
  }
  if (below === 0) return line;
  // The lines of a block of text follow the line that opens it; a text in quotes begins on its own.
  const block = isScalar(node) && (node.type === 'BLOCK_LITERAL' || node.type === 'BLOCK_FOLDED');
  return line + (block ? below : below - 1);
}

function child(node: unknown, key: PropertyKey): { readonly node: Node | null; readonly offset: number } | undefined {
  if (isSeq(node) && typeof key === 'number') {
    const item = node.items[key] as Node | undefined;
    return item?.range ? { node: item, offset: item.range[0] } : undefined;
  }
  if (!isMap(node)) return undefined;
  const pair = node.items.find((one) => isScalar(one.key) && String(one.key.value) === String(key));
  if (!pair || !isScalar(pair.key) || !pair.key.range) return undefined;
  return { node: pair.value as Node | null, offset: pair.key.range[0] };
}

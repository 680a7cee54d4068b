import { CST, Lexer, LineCounter, parseDocument, type Document } from 'yaml';
import type { LessonFault } from './checking/fault';
import { LONGEST_LESSON } from './lesson';

/** Words, marks and spaces of YAML in one lesson, and backslashes in quotation marks; those shipped have some three thousand. */
const MOST_MARKS = 20_000;
/** Groups and lists inside one another. */
const DEEPEST = 30;
/** Faults of one text that are told. */
const MOST_TOLD = 5;

export type LessonDocument =
  | { readonly ok: true; readonly document: Document.Parsed; readonly lines: LineCounter }
  | { readonly ok: false; readonly faults: readonly LessonFault[] };

/**
 * The YAML of a lesson, or what keeps it from being any. Never throws. A text made to be slow, such as one of a hundred
 * thousand quotation marks or brackets, is refused before it is looked at closely.
 */
export function lessonDocument(text: string): LessonDocument {
  const excess = text.length > LONGEST_LESSON ? tooLong(text) : tooMuch(text);
  if (excess) return { ok: false, faults: [excess] };
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    // Its own messages quote the text around each fault, which takes minutes where a text has nothing but faults.
    prettyErrors: false,
    logLevel: 'error',
    uniqueKeys: true,
    merge: false,
    customTags: [],
    resolveKnownTags: false,
  });
  if (document.errors.length === 0) return { ok: true, document, lines };
  return {
    ok: false,
    faults: document.errors
      .slice(0, MOST_TOLD)
      .map(({ message, pos }) =>
        fault(
          lines.linePos(pos[0]).line,
          `This is not YAML: ${message.split('\n')[0]!.replace(/[.:]*$/, '.')}`,
          'Mend the indentation or the quotation marks there.',
        ),
      ),
  };
}

function tooLong({ length }: string): LessonFault {
  return fault(
    1,
    `This lesson has ${length} characters; ${LONGEST_LESSON} are read.`,
    'Shorten it, or split it in two.',
  );
}

/** What is too much for one lesson, counted without understanding it. */
function tooMuch(text: string): LessonFault | undefined {
  let marks = 0;
  let line = 1;
  let open = 0;
  let beginningsOnLine = 0;
  for (const mark of new Lexer().lex(text)) {
    const type = CST.tokenType(mark);
    marks += type === 'double-quoted-scalar' ? mark.split('\\').length : 1;
    if (marks > MOST_MARKS)
      return fault(
        line,
        'This lesson has more groups, lists and values than are read.',
        'Shorten it, or split it in two.',
      );
    if (type === 'flow-map-start' || type === 'flow-seq-start') open += 1;
    else if (type === 'flow-map-end' || type === 'flow-seq-end') open = Math.max(0, open - 1);
    else if (type === 'newline') beginningsOnLine = 0;
    else if (open === 0 && (type === 'seq-item-ind' || type === 'explicit-key-ind' || type === 'map-value-ind'))
      beginningsOnLine += 1;
    if (open > DEEPEST || beginningsOnLine > DEEPEST) {
      return fault(
        line,
        'Groups and lists lie too deep inside one another here.',
        'Write them on lines of their own, as in the other lessons.',
      );
    }
    line += mark.split('\n').length - 1;
  }
  return undefined;
}

function fault(line: number, what: string, mend: string): LessonFault {
  return { line, path: [], what, mend };
}

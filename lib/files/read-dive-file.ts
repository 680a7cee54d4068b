import { answerQuestion, guessColumns, type Question } from './csv/guess-columns';
import { readCsv } from './csv/read-csv';
import { readUddf } from './uddf/read-uddf';
import type { FileResult, Hooks } from './records/record';
import { refusalOf } from './refused-file';
import { HEAD_BYTES, readHead, textOfBytes, type Pieces } from './text-of-bytes';

/**
 * Reads a file of dives of either kind from its bytes. What only a person can tell of a CSV file is asked through
 * `answer`; a question left unanswered is settled by its guess, and a note says so.
 * @param head the first bytes of the file, `HEAD_BYTES` of them or all there are
 * @param pieces the whole file from its beginning
 */
export async function readDiveFile(
  head: Uint8Array,
  pieces: Pieces<Uint8Array>,
  { answer, hooks = {} }: { answer?: ((question: Question) => string | undefined) | undefined; hooks?: Hooks } = {},
): Promise<FileResult> {
  let start;
  try {
    start = readHead(head);
  } catch (thrown) {
    return refusalOf(thrown);
  }
  const encodingNotes = start.encoding.note === undefined ? [] : [start.encoding.note];
  if (start.kind === 'uddf') return withNotes(await readUddf(textOfBytes(pieces), hooks), encodingNotes);
  const guess = guessColumns(start.text, head.length < HEAD_BYTES);
  if (!guess.ok) return { ok: false, what: guess.what, mend: guess.mend, rescued: [] };
  const notes: string[] = [];
  let { mapping } = guess;
  for (const question of guess.questions) {
    const answered = answer?.(question);
    if (answered === undefined) {
      const taken = question.choices.find(({ value }) => value === question.guess)?.label ?? question.guess;
      notes.push(`${question.ask} ${question.why} Taken: ${taken}.`);
    }
    mapping = answerQuestion(mapping, question, answered ?? question.guess);
  }
  return withNotes(await readCsv(textOfBytes(pieces), mapping, hooks), [...encodingNotes, ...notes]);
}

function withNotes(result: FileResult, notes: readonly string[]): FileResult {
  return result.ok ? { ...result, notes: [...notes, ...result.notes] } : result;
}

import type { Dive } from '@/lib/dive/dive';
import { parseScript, type Notice } from '@/lib/dive/script';
import { checkRecord } from '@/lib/files/records/check-record';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { guessColumns } from '@/lib/files/csv/guess-columns';
import { readDiveFile } from '@/lib/files/read-dive-file';
import type { Recording } from '@/lib/files/records/record';
import { repairRecord } from '@/lib/files/records/repair-record';
import { HEAD_BYTES } from '@/lib/files/text-of-bytes';
import { BadInput } from '../bad-input';

export interface DiveOfFile {
  readonly dive: Dive;
  readonly warnings: readonly Notice[];
}

/**
 * The dive a file holds: a script, or a record in UDDF or CSV, told by its ending or else by what is in it. Throws
 * BadInput with the place, what is wrong and how to mend it.
 * @param repair whether the person agrees to every repair of a record's faults
 */
export async function diveOfFile(file: string, bytes: Uint8Array, repair: boolean): Promise<DiveOfFile> {
  const text = new TextDecoder().decode(bytes);
  if (!isRecord(file, text)) return diveOfScript(file, text);
  const read = await readDiveFile(bytes.subarray(0, HEAD_BYTES), [bytes]);
  if (!read.ok) throw new BadInput(`${file}:${lineIn(read.what)}:1: ${read.what} ${read.mend}`);
  const told: string[] = [...read.notes];
  const recordings = read.recordings.flatMap((recording) => mended(recording, repair, told));
  const made = diveFromRecords(recordings);
  if (!made.ok) {
    const row = blockedRow(recordings);
    const mend = row === undefined ? made.mend : 'Mend the file, or agree to every repair with --repair.';
    throw new BadInput(`${file}:${row ?? lineIn(made.what)}:1: ${made.what} ${mend}`);
  }
  const { dive, notes, depthErrorM, tissueErrorBar } = made.value;
  told.push(...notes);
  if (depthErrorM > 1e-6)
    told.push(
      `The record was simplified: within ${depthErrorM.toFixed(2)} m of depth and ${tissueErrorBar.toFixed(4)} bar of inert gas at every sample.`,
    );
  return {
    dive,
    warnings: told.map((message) => ({ line: lineIn(message), column: 1, endColumn: 2, message, mend: '' })),
  };
}

function diveOfScript(file: string, text: string): DiveOfFile {
  const parsed = parseScript(text);
  if (parsed.ok) {
    if (parsed.dive.steps.some((step) => step.kind !== 'switch')) return parsed;
    throw new BadInput(
      `${file}:1:1: this script has no step, so that there is no dive. Write one such as “descend to 18 m at 18 m/min”.`,
    );
  }
  const [first] = parsed.errors;
  throw new BadInput(`${file}:${first!.line}:${first!.column}: ${first!.message} ${first!.mend}`);
}

const RECORD_ENDINGS = /\.(csv|tsv|uddf|xml)$/i;

function isRecord(file: string, text: string): boolean {
  if (RECORD_ENDINGS.test(file)) return true;
  if (/^\uFEFF?\s*<(\?xml|uddf|!--)/i.test(text)) return true;
  if (parseScript(text).ok) return false;
  const guess = guessColumns(text.slice(0, HEAD_BYTES), text.length <= HEAD_BYTES);
  return guess.ok && guess.mapping.columns.length > 1 && !guess.questions.some(({ id }) => id.startsWith('column:'));
}

/** Tells of each finding; with consent, what is wrong is repaired and what was done is told. */
function mended(recording: Recording, repair: boolean, told: string[]): readonly Recording[] {
  const { findings } = checkRecord(recording);
  const repaired = repair ? repairRecord(recording, () => true).recordings : [recording];
  for (const { what, repair: would } of findings)
    told.push(repair && would !== undefined ? `${what} Repaired: ${would}` : what);
  return repaired;
}

/** The row of the first finding that keeps a dive from being made, or 1 where rows are not lines of the file; undefined where there is none. */
function blockedRow(recordings: readonly Recording[]): number | undefined {
  for (const recording of recordings) {
    const blocking = checkRecord(recording).findings.find((finding) => finding.blocking);
    if (blocking) return recording.rowsAre === 'row' ? blocking.row : 1;
  }
  return undefined;
}

/** The line a sentence about a file speaks of, if any; else the first. */
function lineIn(sentence: string): number {
  return Number(/\b(?:[Rr]ow|[Ll]ine) (\d+)/.exec(sentence)?.[1] ?? 1);
}

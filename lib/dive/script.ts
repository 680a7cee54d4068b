import type { Dive, ScriptLine } from './dive';
import { gathered, inOrder, type Notice } from './script/notice';
import { readLine, remarkFrom } from './script/read-line';
import { gasCautions } from './script/cautions';
import { readHeader } from './script/header';
import type { LineRead } from './script/line';
import { splitLines } from './script/split-lines';
import { ratesLeftOut } from './script/settings/rates-left-out';
import { scriptSystem } from './script/script-system';
import { walkSteps } from './script/walk';
import { plainScript } from './script/plain-script';

export { splitLines } from './script/split-lines';
export { gathered, type Notice } from './script/notice';

export const MOST_LINES = 5000;
export const MOST_CHARACTERS = 200_000;

/** What a script means, or every reason why it means nothing yet; and what is unwise about it. */
export type ParseResult =
  | { readonly ok: true; readonly dive: Dive; readonly warnings: readonly Notice[] }
  | { readonly ok: false; readonly errors: readonly Notice[]; readonly warnings: readonly Notice[] };

/**
 * Reads a script. Never throws, whatever the text.
 *
 * Lines end with a line feed. A carriage return before it is kept as part of the line, so Windows line ends come back
 * as they were; a carriage return alone counts as a line end and is the one thing that is written back differently.
 */
export function parseScript(text: string): ParseResult {
  if (latest?.text !== text) latest = { text, result: read(text) };
  return latest.result;
}

/** The script read last: an edit reads what it made, and whoever is handed it reads it again. */
let latest: { readonly text: string; readonly result: ParseResult } | undefined;

function read(text: string): ParseResult {
  if (text.length > MOST_CHARACTERS) {
    return tooLong(`This script has ${text.length} characters; ${MOST_CHARACTERS} are read.`);
  }
  const texts = splitLines(text);
  if (texts.length > MOST_LINES) return tooLong(`This script has ${texts.length} lines; ${MOST_LINES} are read.`);
  const reads = texts.map(readLine);
  const errors: Notice[] = [];
  const settings = readHeader(texts, reads, errors);
  const system = scriptSystem(texts, reads);
  const walked = walkSteps(texts, reads, settings.plan, system, errors);
  if (errors.length > 0) return { ok: false, errors: gathered(errors), warnings: [] };
  const dive = { settings, steps: walked.map(({ step }) => step), lines: scriptLines(texts, reads) };
  const notes = ratesLeftOut(settings.plan, walked, reads, system);
  return { ok: true, dive, warnings: inOrder([...notes, ...gasCautions(settings, walked, reads, system)]) };
}

function tooLong(message: string): ParseResult {
  return {
    ok: false,
    errors: [{ line: 1, column: 1, endColumn: 2, message, mend: 'Shorten it, or split it into several dives.' }],
    warnings: [],
  };
}

function scriptLines(texts: readonly string[], reads: readonly LineRead[]): ScriptLine[] {
  let index = 0;
  return reads.map((read, i): ScriptLine => {
    const text = texts[i]!;
    if (read.as === 'setting') return { text, stands: { as: 'setting', name: read.setting.name } };
    if (read.as === 'step') return { text, stands: { as: 'step', index: index++ } };
    return { text, stands: { as: 'remark' } };
  });
}

/**
 * Writes a dive as a script: as typed while its lines still say what it is; otherwise in plain words, with the remarks
 * of the lines kept at the top.
 */
export function writeScript(dive: Dive): string {
  const plain = plainScript(dive);
  if (dive.lines.length === 0) return plain;
  const typed = dive.lines.map(({ text }) => text).join('\n');
  const read = parseScript(typed);
  if (read.ok && plainScript(read.dive) === plain) return typed;
  const remarks = dive.lines.map(({ text }) => text.slice(remarkFrom(text)).trim()).filter((remark) => remark !== '');
  return [...remarks, plain].join('\n');
}

import type { Span } from './line';

/** Part of a step that begins with a small word: `at 18 m/min`. What comes before any such word has the word ''. */
export interface Clause {
  readonly word: string;
  /** The value after the word, without spaces and commas around it. */
  readonly text: string;
  readonly span: Span;
  /** The word and the value. */
  readonly whole: Span;
}

const SMALL_WORD = /(?<![^\s,])(to|at|in|for|over|within|from|until)(?![a-z])/g;

/** Splits a step after its verb into clauses, in the order written; an empty first one is left out. */
export function splitClauses(line: string, plain: string, from: number, to: number): Clause[] {
  const clauses: Clause[] = [];
  let word = '';
  let start = from;
  let wordFrom = from;
  const close = (end: number) => {
    let [valueFrom, valueTo] = [start, end];
    while (valueFrom < valueTo && isGap(plain.charCodeAt(valueFrom))) valueFrom++;
    while (valueTo > valueFrom && isGap(plain.charCodeAt(valueTo - 1))) valueTo--;
    if (word === '' && valueFrom === valueTo) return;
    const text = line.slice(valueFrom, valueTo);
    const wordEnd = wordFrom + word.length;
    // A word with nothing after it is all there is to point at.
    const span: Span = text === '' ? [wordFrom, wordEnd] : [valueFrom, valueTo];
    clauses.push({ word, text, span, whole: [word === '' ? span[0] : wordFrom, Math.max(wordEnd, span[1])] });
  };
  for (const found of plain.slice(from, to).matchAll(SMALL_WORD)) {
    close(from + found.index);
    word = found[1]!;
    wordFrom = from + found.index;
    start = wordFrom + word.length;
  }
  close(to);
  return clauses;
}

function isGap(code: number): boolean {
  return code <= 32 || code === 44 || code === 0xa0 || code === 0x2028 || code === 0x2029;
}

import { expect } from 'vitest';
import { knownNames } from '@/app/stage/known-names';
import { readGlossary } from '@/app/lessons/read-content';
import { readLesson, type ReadLesson } from '@/lib/lesson/read-lesson';
import { expectUnpolluted, promptly } from './hostile';

const known = knownNames(readGlossary());

/** A lesson is read, or refused in words that lead to its mistake. */
export function expectRead(text: string, patienceMs?: number): ReadLesson {
  const read = promptly(() => readLesson(text, { known, draws: 1 }), patienceMs);
  expectUnpolluted(read);
  if (read.ok) return read;
  expect(read.faults.length).toBeGreaterThan(0);
  const lines = text.split(/\r\n|\r|\n/).length;
  for (const { line, what, mend } of read.faults) {
    expect(line).toBeGreaterThanOrEqual(1);
    expect(line).toBeLessThanOrEqual(lines);
    expect(what).toMatch(/\S.*[.?]$/s);
    expect(mend).toMatch(/\S.*[.?]$/s);
    // What is quoted are the words of whoever wrote it.
    expect(what.replace(/“[^”]*”/g, '')).not.toMatch(/call stack|undefined|\[object|NaN/);
  }
  return read;
}

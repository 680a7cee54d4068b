import { safeStorage } from '../parts/safe-storage';
import { readKept } from './document-kind';
import { parsedText, textAt } from './small-storage';
import type { Shelved, ShelvedKind } from './shelved';

/*
 * Last words of windows closed before the shelf had answered, kept where writing is instant: one for each window and
 * document.
 */

/** Those of one kind that can be read. */
export function lastWords<Content>(kind: ShelvedKind<Content>): readonly Shelved<Content>[] {
  return Object.values(storedWords(kind.lastWords)).flatMap((stored) => readKept(kind, stored) ?? []);
}

export function sayLastWords<Content>(kind: ShelvedKind<Content>, speaker: string, record: Shelved<Content>): void {
  const words = { ...storedWords(kind.lastWords), [speaker]: record };
  safeStorage.setItem(kind.lastWords, JSON.stringify(words));
}

export function forgetLastWords({ lastWords: name }: { lastWords: string }, speakers: readonly string[]): void {
  const left = Object.entries(storedWords(name)).filter(([speaker]) => !speakers.includes(speaker));
  if (left.length === 0) safeStorage.removeItem(name);
  else safeStorage.setItem(name, JSON.stringify(Object.fromEntries(left)));
}

function storedWords(name: string): Record<string, unknown> {
  const read = parsedText(textAt(name) ?? '{}');
  return typeof read === 'object' && read !== null ? (read as Record<string, unknown>) : {};
}

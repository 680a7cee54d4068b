import { safeStorage } from '../parts/safe-storage';
import type { RefusalReason } from './shelf';

/** What lies under a name in the browser's small storage; null where nothing does, or where it may not be used. */
export function textAt(name: string): string | null {
  return safeStorage.getItem(name) as string | null;
}

/** Writes a text, and returns why that could not be done, if it could not. */
export function keepText(name: string, text: string): RefusalReason | undefined {
  safeStorage.setItem(name, text);
  if (textAt(name) === text) return undefined;
  // Storage that takes a letter and not a record is full; one that takes nothing is blocked.
  const probe = 'halftime.probe';
  safeStorage.setItem(probe, 'a');
  const taken = textAt(probe) === 'a';
  safeStorage.removeItem(probe);
  return taken ? 'full' : 'blocked';
}

/** A text as JSON; undefined where it is none. */
export function parsedText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

import { safeStorage } from '../parts/safe-storage';
import { ShelfRefusal, type Shelf } from './shelf';

/** All records under one name, so that they change together or not at all. */
const NAME = 'halftime.desk.records';

/** A shelf in the browser's small storage, for browsers whose database may not be used. */
export function storageShelf(): Shelf {
  return {
    read: async (name) => recordsNow()[name],
    readAll: async (prefix) => Object.entries(recordsNow()).filter(([name]) => name.startsWith(prefix)),
    async change(name, follow) {
      const records = recordsNow();
      const next = JSON.stringify({ ...records, ...follow(records[name]) });
      safeStorage.setItem(NAME, next);
      if (textAt(NAME) === next) return;
      throw new ShelfRefusal(takesALetter() ? 'full' : 'blocked');
    },
  };
}

function textAt(name: string): string | null {
  return safeStorage.getItem(name) as string | null;
}

function recordsNow(): Record<string, unknown> {
  const text = textAt(NAME);
  if (text === null) return {};
  try {
    const read: unknown = JSON.parse(text);
    if (typeof read === 'object' && read !== null && !Array.isArray(read)) return read as Record<string, unknown>;
  } catch {
    // Not JSON: set aside as it is, in the next change.
  }
  return { 'aside/records': text };
}

/** Storage that takes a letter and not a dive is full; one that takes nothing is blocked. */
function takesALetter(): boolean {
  const probe = `${NAME}.probe`;
  safeStorage.setItem(probe, 'a');
  const taken = textAt(probe) === 'a';
  safeStorage.removeItem(probe);
  return taken;
}

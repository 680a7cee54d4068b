import { keepText, parsedText, textAt } from './small-storage';
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
      const refusal = keepText(NAME, JSON.stringify({ ...records, ...follow(records[name]) }));
      if (refusal) throw new ShelfRefusal(refusal);
    },
  };
}

function recordsNow(): Record<string, unknown> {
  const text = textAt(NAME);
  if (text === null) return {};
  const read = parsedText(text);
  if (typeof read === 'object' && read !== null && !Array.isArray(read)) return read as Record<string, unknown>;
  // No records: set aside as it is, in the next change.
  return { 'aside/records': text };
}

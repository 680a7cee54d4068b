import { ShelfRefusal, type RefusalReason, type Shelf } from '@/app/keep/shelf';

/** A shelf in memory, with what lies on it in sight; while `refuses` is set nothing can be written. */
export function memoryShelf(records: Record<string, unknown> = {}) {
  const lying = new Map(Object.entries(records));
  const shelf: Shelf & { lying: Map<string, unknown>; refuses: RefusalReason | undefined } = {
    lying,
    refuses: undefined,
    read: async (name) => lying.get(name),
    readAll: async (prefix) => [...lying].filter(([name]) => name.startsWith(prefix)),
    async change(name, follow) {
      if (shelf.refuses) throw new ShelfRefusal(shelf.refuses);
      for (const [key, record] of Object.entries(follow(lying.get(name)))) {
        if (record === undefined) lying.delete(key);
        else lying.set(key, structuredClone(record));
      }
    },
  };
  return shelf;
}

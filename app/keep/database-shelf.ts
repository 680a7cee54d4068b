import { openDB } from 'idb';
import { reasonOf, ShelfRefusal, type Shelf } from './shelf';

const DATABASE = 'halftime.desk';
const RECORDS = 'records';

/** A shelf in the browser's own database. Rejects where there is none, or where it may not be used. */
export async function openDatabaseShelf(): Promise<Shelf> {
  let database = await open();
  /** Browsers close a database behind a page's back, such as in a window long out of sight: it is then opened again. */
  async function using<Result>(work: () => Promise<Result>): Promise<Result> {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error;
      database = await open();
      return work();
    }
  }
  return {
    read: (name) => using(() => database.get(RECORDS, name) as Promise<unknown>),
    readAll: (prefix) =>
      using(async () => {
        const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`);
        const { store } = database.transaction(RECORDS);
        const [names, records] = await Promise.all([store.getAllKeys(range), store.getAll(range)]);
        return names.map((name, index) => [String(name), records[index] as unknown] as const);
      }),
    async change(name, follow) {
      try {
        await using(async () => {
          const transaction = database.transaction(RECORDS, 'readwrite');
          const follows = follow(await transaction.store.get(name));
          const writes = Object.entries(follows).map(([key, record]) =>
            record === undefined ? transaction.store.delete(key) : transaction.store.put(record, key),
          );
          await Promise.all([...writes, transaction.done]);
        });
      } catch (error) {
        throw new ShelfRefusal(reasonOf(error));
      }
    },
  };
}

function open() {
  return openDB(DATABASE, 1, {
    upgrade: (fresh) => void fresh.createObjectStore(RECORDS),
    // Another window wants a newer form of the database: it may have it.
    blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close(),
  });
}

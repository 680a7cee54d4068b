/** Where work is kept on this machine between visits: records, each under its name. */
export interface Shelf {
  read: (name: string) => Promise<unknown>;
  /** Every record whose name begins so, with its name. */
  readAll: (prefix: string) => Promise<readonly (readonly [name: string, record: unknown])[]>;
  /**
   * Reads one record and writes what follows from it, with nobody writing in between. A record followed by `undefined`
   * is taken off the shelf. Either all is written or, with a `ShelfRefusal`, nothing.
   */
  change: (name: string, follow: (record: unknown) => Readonly<Record<string, unknown>>) => Promise<void>;
}

/** Why nothing could be written: there is no room left, or the browser does not let pages keep anything. */
export type RefusalReason = 'full' | 'blocked';

export class ShelfRefusal extends Error {
  readonly reason: RefusalReason;

  constructor(reason: RefusalReason) {
    super(`nothing was written: storage is ${reason}`);
    this.reason = reason;
  }
}

/** What any failure to write comes down to. */
export function reasonOf(error: unknown): RefusalReason {
  if (error instanceof ShelfRefusal) return error.reason;
  return error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'blocked';
}

/** Writes one record, whatever was there; `undefined` takes it off the shelf. */
export function put(shelf: Shelf, name: string, record: unknown): Promise<void> {
  return shelf.change(name, () => ({ [name]: record }));
}

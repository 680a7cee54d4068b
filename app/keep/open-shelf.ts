import type { Shelf } from './shelf';
import { storageShelf } from './storage-shelf';

/** A database that has not opened by then is not going to, ms. */
const OPENS_WITHIN_MS = 4000;

let opened: Promise<Shelf> | undefined;

/** The shelf of this machine: the database where it may be used, the small storage otherwise. Never rejects. */
export function openShelf(): Promise<Shelf> {
  opened ??= new Promise<Shelf>((resolve) => {
    const fallBack = () => resolve(storageShelf());
    setTimeout(fallBack, OPENS_WITHIN_MS);
    import('./database-shelf').then(({ openDatabaseShelf }) => openDatabaseShelf()).then(resolve, fallBack);
  });
  return opened;
}

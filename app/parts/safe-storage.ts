import type { StateStorage } from 'zustand/middleware';

/** Reads find nothing and writes are dropped where a storage is blocked or full, and nothing breaks. */
function safely(storage: () => Storage): StateStorage {
  return {
    getItem(name) {
      try {
        return storage().getItem(name);
      } catch {
        return null;
      }
    },
    setItem(name, value) {
      try {
        storage().setItem(name, value);
      } catch {
        return;
      }
    },
    removeItem(name) {
      try {
        storage().removeItem(name);
      } catch {
        return;
      }
    },
  };
}

/** The browser's own storage where it may be used; elsewhere a choice lasts until the page is closed. */
export const safeStorage = safely(() => window.localStorage);

/** The same for this window alone, until it is closed. */
export const safeSession = safely(() => window.sessionStorage);

import type { StateStorage } from 'zustand/middleware';

/**
 * The browser's own storage where it may be used. Where it is blocked or full, reads find nothing and writes are
 * dropped: a choice then lasts until the page is closed, and nothing breaks.
 */
export const safeStorage: StateStorage = {
  getItem(name) {
    try {
      return window.localStorage.getItem(name);
    } catch {
      return null;
    }
  },
  setItem(name, value) {
    try {
      window.localStorage.setItem(name, value);
    } catch {
      return;
    }
  },
  removeItem(name) {
    try {
      window.localStorage.removeItem(name);
    } catch {
      return;
    }
  },
};

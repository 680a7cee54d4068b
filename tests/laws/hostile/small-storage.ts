import { Window } from 'happy-dom';
import { vi } from 'vitest';

/** The small storage of a browser, new and empty, where a page would look for it. */
export function smallStorage(): { local: Storage; session: Storage } {
  const { localStorage, sessionStorage } = new Window();
  vi.stubGlobal('window', {
    localStorage,
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  });
  vi.stubGlobal('sessionStorage', sessionStorage);
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  return { local: localStorage, session: sessionStorage };
}

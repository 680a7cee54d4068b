import { afterEach, beforeEach, vi } from 'vitest';
import { useStatus } from '@/app/parts/status';

/** Files handed to the reader, as text. */
export const saved: string[] = [];

export const words = {
  unread: 'The note can’t be read, so it begins anew.',
  refused: { full: 'No room for the note.', blocked: 'The note can’t be kept.' },
  fileName: 'note.json',
};

export const message = () => useStatus.getState().message;

/** Before each test of a file: nothing kept, nothing said, and files handed over as text. */
export function keptInTests() {
  beforeEach(() => {
    localStorage.clear();
    saved.length = 0;
    vi.spyOn(URL, 'createObjectURL').mockImplementation((file) => {
      void (file as Blob).text().then((text) => saved.push(text));
      return 'blob:file';
    });
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
    useStatus.getState().clear();
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.restoreAllMocks();
  });
}

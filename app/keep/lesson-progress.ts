import type { Progress } from '@/lib/lesson/progress';
import { readProgress } from '@/lib/lesson/read-progress';
import type { RecordKind } from './kept-record';

/** What a person has done in lessons, kept on this machine and nowhere else. */
export const progressKind: RecordKind<Progress> = {
  name: 'halftime.lessons',
  version: 2,
  // Used piece by piece: an answer that makes no sense loses no other.
  schema: {
    safeParse(record) {
      const { version, state } = (record ?? {}) as { version?: unknown; state?: { progress?: unknown } };
      const progress = state?.progress;
      const readable = (version === 1 || version === 2) && typeof progress === 'object' && progress !== null;
      return readable ? { data: readProgress(progress) } : {};
    },
  },
  write: (progress) => ({ state: { progress }, version: 2 }),
  words: {
    unread: 'What was kept of your lessons can’t be read here, so they begin anew.',
    refused: {
      full: 'There is no room left in this browser to keep what you do in lessons: it lasts until the page is closed. Print your results to keep them; then delete dives on the desk that you no longer need.',
      blocked:
        'This browser does not let the page keep anything, so what you do in lessons lasts until the page is closed. Print your results to keep them.',
    },
    fileName: 'halftime-lessons-unread.json',
  },
};

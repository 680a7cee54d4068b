import * as z from 'zod';
import { forgetLastWords, lastWords } from '../../keep/last-words';
import { readEach } from '../../keep/read-each';
import type { Shelf } from '../../keep/shelf';
import { othersThere, speakerOf, stampSchema, type Shelved, type ShelvedKind } from '../../keep/shelved';

/** A text being written may be longer than a lesson that can be read: it is kept all the same. */
const LONGEST_DRAFT = 1_000_000;

interface DraftContent {
  /** The name of its own record. */
  readonly name: string;
  readonly text: string;
}
export type Draft = Shelved<DraftContent>;

/** Lessons a person makes, as they are kept on this machine: each a record under its own name. */
export const draftKind: ShelvedKind<DraftContent> = {
  name: 'lesson:',
  version: 1,
  schema: stampSchema.extend({
    name: z.string().startsWith('lesson:'),
    text: z.string().max(LONGEST_DRAFT),
  }),
  // Records once had no revision: the time of writing named it, and the window was its writer.
  migrate: (stored) =>
    'savedAt' in stored && !('revision' in stored)
      ? { visit: 'writer' in stored ? stored.writer : 'other', revision: stored.savedAt, ...stored }
      : stored,
  lastWords: 'halftime.workshop.last',
  // One for each window that wrote it, however often they take turns.
  beside(theirs, ours) {
    const name = `${theirs.name}-${theirs.visit}`;
    return theirs.text === ours.text ? {} : { [name]: { ...theirs, name } };
  },
  words: {
    unread: 'What was kept of a lesson can’t be read by this version.',
    refused: {
      full: 'There is no room left in this browser to keep your lesson. Go on working, and export it as a file; then delete lessons or dives you no longer need.',
      blocked:
        'This browser does not let the page keep anything, so your lesson lasts until the page is closed. Go on working, and export it as a file to keep it.',
    },
    fileName: 'halftime-lessons-unread.json',
  },
};

export interface KeptDrafts {
  /** The one changed last first. */
  readonly drafts: readonly Draft[];
  /** Records that are not understood here, such as a newer version's: they stay where they are. */
  readonly unread: readonly unknown[];
}

/** All lessons kept here. */
export async function keptDrafts(shelf: Shelf): Promise<KeptDrafts> {
  const { read, unread } = await readEach(shelf, draftKind);
  return {
    drafts: read.sort((one, other) => other.savedAt.localeCompare(one.savedAt)),
    unread: unread.map(({ record }) => record),
  };
}

/** Puts what closed windows could not write any more where it belongs, or beside what has been written there since. */
export async function keepLastWords(shelf: Shelf): Promise<void> {
  const words = lastWords(draftKind);
  for (const word of words)
    await shelf.change(word.name, (stored) => {
      const others = othersThere(draftKind, word, stored);
      return others ? draftKind.beside(word, others) : { [word.name]: word };
    });
  forgetLastWords(
    draftKind,
    words.map((word) => speakerOf(draftKind, word)),
  );
}

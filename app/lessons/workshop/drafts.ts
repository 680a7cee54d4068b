import * as z from 'zod';
import { newName } from '../../desk/keep/desk-record';
import type { RefusalReason, Shelf } from '../../keep/shelf';

/** Lessons a person makes, as they are kept on this machine: each a record under its own name. */
const PREFIX = 'lesson:';

/** A text being written may be longer than a lesson that can be read: it is kept all the same. */
const LONGEST_DRAFT = 1_000_000;

const draftSchema = z.object({
  version: z.literal(1),
  name: z.string().startsWith(PREFIX),
  text: z.string().max(LONGEST_DRAFT),
  savedAt: z.iso.datetime(),
  /** The window it was written in, by a name made up when it was opened. */
  writer: z.string().max(100).optional(),
});
export type Draft = z.infer<typeof draftSchema>;

export function newDraft(text: string): Draft {
  return { version: 1, name: `${PREFIX}${newName()}`, text, savedAt: new Date().toISOString() };
}

export interface KeptDrafts {
  /** The one changed last first. */
  readonly drafts: readonly Draft[];
  /** Records that are not understood here, such as a newer version's: they stay where they are. */
  readonly unread: readonly unknown[];
}

/** All lessons kept here. */
export async function keptDrafts(shelf: Shelf): Promise<KeptDrafts> {
  const drafts: Draft[] = [];
  const unread: unknown[] = [];
  for (const [, record] of await shelf.readAll(PREFIX)) {
    const draft = draftSchema.safeParse(record).data;
    if (draft) drafts.push(draft);
    else unread.push(record);
  }
  return { drafts: drafts.sort((one, other) => other.savedAt.localeCompare(one.savedAt)), unread };
}

/**
 * Keeps a lesson that was made from what was kept at `standsFor`. Where another window has written it since, that text
 * becomes a lesson of its own, which is handed back.
 */
export async function keepDraft(shelf: Shelf, draft: Draft, standsFor: string | undefined): Promise<Draft | undefined> {
  let others: Draft | undefined;
  await shelf.change(draft.name, (stored) => {
    const there = draftSchema.safeParse(stored).data;
    const foreign = there && there.writer !== draft.writer && there.savedAt !== standsFor && there.text !== draft.text;
    // One for each window that wrote it, however often they take turns.
    others = foreign ? { ...there, name: `${draft.name}-${there.writer ?? 'other'}` } : undefined;
    return { [draft.name]: draft, ...(others && { [others.name]: others }) };
  });
  return others;
}

export async function dropDraft(shelf: Shelf, name: string): Promise<void> {
  await shelf.change(name, () => ({ [name]: undefined }));
}

/** Why a lesson could not be kept, for the person whose work it is. */
export const DRAFT_REFUSALS: Readonly<Record<RefusalReason, string>> = {
  full: 'There is no room left in this browser to keep your lesson. Go on working, and export it as a file; then delete lessons or dives you no longer need.',
  blocked:
    'This browser does not let the page keep anything, so your lesson lasts until the page is closed. Go on working, and export it as a file to keep it.',
};

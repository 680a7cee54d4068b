import * as z from 'zod';
import { newName } from '../../desk/keep/desk-record';
import { put, type RefusalReason, type Shelf } from '../../desk/keep/shelf';

/** Lessons a person makes, as they are kept on this machine: each a record under its own name. */
const PREFIX = 'lesson:';

/** A text being written may be longer than a lesson that can be read: it is kept all the same. */
const LONGEST_DRAFT = 1_000_000;

const draftSchema = z.object({
  version: z.literal(1),
  name: z.string().startsWith(PREFIX),
  text: z.string().max(LONGEST_DRAFT),
  savedAt: z.iso.datetime(),
});
export type Draft = z.infer<typeof draftSchema>;

export function newDraft(text: string): Draft {
  return { version: 1, name: `${PREFIX}${newName()}`, text, savedAt: new Date().toISOString() };
}

/** All lessons kept here, the one changed last first. A record that cannot be read is passed over and stays where it is. */
export async function keptDrafts(shelf: Shelf): Promise<readonly Draft[]> {
  const records = await shelf.readAll(PREFIX);
  return records
    .flatMap(([, record]) => draftSchema.safeParse(record).data ?? [])
    .sort((one, other) => other.savedAt.localeCompare(one.savedAt));
}

export async function keepDraft(shelf: Shelf, draft: Draft): Promise<void> {
  await put(shelf, draft.name, draft);
}

export async function dropDraft(shelf: Shelf, name: string): Promise<void> {
  await shelf.change(name, () => ({ [name]: undefined }));
}

/** Why a lesson could not be kept, for the person whose work it is. */
export const DRAFT_REFUSALS: Readonly<Record<RefusalReason, string>> = {
  full: 'There is no room left in this browser to keep your lesson. Go on working, and export it as a file; then delete lessons or dives you no longer need.',
  blocked: 'This browser does not let the page keep anything, so your lesson lasts until the page is closed. Go on working, and export it as a file to keep it.',
};

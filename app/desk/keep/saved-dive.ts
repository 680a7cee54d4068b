import type { StoredDive } from '@/lib/files/records/stored-dives';
import { deskViewSchema, type DeskView } from '../../stage/desk-view';

/** Names of saved dives on the shelf begin so. */
export const DIVES = 'dive/';
export const diveRecord = (id: string) => `${DIVES}${id}`;

export const LONGEST_TITLE = 200;

interface Saved {
  id: string;
  title: string;
  script: string;
  view: DeskView | undefined;
  savedAt?: string;
}

/** A dive as it goes on the shelf, with how the desk looked. */
export function savedDive({ id, title, script, view, savedAt = new Date().toISOString() }: Saved): StoredDive {
  return { id, title: title.slice(0, LONGEST_TITLE), script, changedAt: savedAt, ...(view && { view }) };
}

/** How the desk looked when a dive was saved; undefined where that is not known or no longer understood. */
export function viewOfSaved(dive: StoredDive): DeskView | undefined {
  return deskViewSchema.safeParse(dive['view']).data;
}

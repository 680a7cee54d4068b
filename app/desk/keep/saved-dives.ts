import { readStoredDives, storedDiveSchema, writeStoredDives, type StoredDive } from '@/lib/files/records/stored-dives';
import { readEach, type Unread } from '../../keep/read-each';
import { newName } from '../../keep/new-name';
import { diveRecord, DIVES, savedDive } from './saved-dive';
import type { DeskView } from '../../stage/desk-view';
import { put, type Shelf } from '../../keep/shelf';

export interface SavedDives {
  /** The newest first. */
  readonly dives: readonly StoredDive[];
  /** Records that are not understood here: kept, and written back when all are exported. */
  readonly unread: readonly Unread[];
}

export async function listDives(shelf: Shelf): Promise<SavedDives> {
  const { read: dives, unread } = await readEach(shelf, { name: DIVES, schema: storedDiveSchema });
  dives.sort((one, other) => (other.changedAt ?? '').localeCompare(one.changedAt ?? ''));
  return { dives, unread };
}

export interface SavedOver {
  readonly dive: StoredDive;
  /** The dive of the same name that stood there before. */
  readonly before: StoredDive | undefined;
}

/** Saves under a name; a dive that has the name already is replaced and handed back. */
export async function saveDive(shelf: Shelf, title: string, script: string, view: DeskView): Promise<SavedOver> {
  const { dives } = await listDives(shelf);
  const before = dives.find((dive) => dive.title === title);
  const dive = savedDive({ id: before?.id ?? newName(), title, script, view });
  await put(shelf, diveRecord(dive.id), dive);
  return { dive, before };
}

/** Puts a dive back as it was, or under another name. */
export function putDive(shelf: Shelf, dive: StoredDive): Promise<void> {
  return put(shelf, diveRecord(dive.id), dive);
}

export function removeDive(shelf: Shelf, { id }: StoredDive): Promise<void> {
  return put(shelf, diveRecord(id), undefined);
}

/** Every saved dive, and every record that could not be read, as the text of one file. */
export async function exportDives(shelf: Shelf): Promise<string> {
  const { dives, unread } = await listDives(shelf);
  return writeStoredDives(dives, unread);
}

/** What came of bringing in a file, for the person who brought it. */
export interface ImportReport {
  readonly ok: boolean;
  readonly sentences: readonly string[];
}

/** Brings in the dives of a file beside those that are here; nothing that is here is written over. */
export async function importDives(shelf: Shelf, text: string): Promise<ImportReport> {
  const read = readStoredDives(text);
  if (!read.ok) return { ok: false, sentences: [read.what, read.mend] };
  const here = (await listDives(shelf)).dives;
  const same = read.dives.filter((dive) =>
    here.some((other) => other.title === dive.title && other.script === dive.script),
  );
  const fresh = read.dives.filter((dive) => !same.includes(dive));
  const writes: Record<string, StoredDive> = {};
  for (const dive of fresh) {
    const id = here.some((other) => other.id === dive.id) ? newName() : dive.id;
    writes[diveRecord(id)] = { ...dive, id, title: freeTitle(dive.title, [...here, ...Object.values(writes)]) };
  }
  await shelf.change(DIVES, () => writes);
  return {
    ok: true,
    sentences: [
      `${counted(fresh.length)} brought in.`,
      ...(same.length > 0 ? [`${counted(same.length)} left out: the same is here already.`] : []),
      ...read.unread.map(({ number, what }) => `Record ${number} left out: ${what}`),
    ],
  };
}

/** The title, with a number where another dive has it. */
function freeTitle(title: string, others: readonly StoredDive[]): string {
  let free = title;
  for (let number = 2; others.some((other) => other.title === free); number += 1)
    free = `${title.slice(0, 190)} (${number})`;
  return free;
}

function counted(dives: number): string {
  return dives === 1 ? '1 dive' : `${dives} dives`;
}

import { storedDiveSchema, type StoredDive } from '@/lib/files/records/stored-dives';
import { readKept } from '../../keep/document-kind';
import { DESK } from '../../keep/dive-on-desk';
import { forgetLastWords, lastWords } from '../../keep/last-words';
import type { Unread } from '../../keep/read-each';
import { newName } from '../../keep/new-name';
import { deskKind, type DeskRecord } from './desk-record';
import type { DeskView } from '../../stage/desk-view';
import { leftBehind, leftBehindBy } from './left-behind';
import { viewOfSaved } from './saved-dive';
import type { Shelf } from '../../keep/shelf';

export interface Restored {
  /** What to put on the desk, if anything was kept. */
  readonly desk: { readonly script: string; readonly view: DeskView | undefined } | undefined;
  /** The revision on the shelf that the desk stands for. */
  readonly revision: string | undefined;
  /** Where a record went that could not be read. */
  readonly setAside: Unread | undefined;
  /** Titles of desks that windows had left unkept, and that are now among the saved dives. */
  readonly found: readonly string[];
}

/**
 * Finds what was last on the desk: of this window's own last visit if there was one, else of any. A record that cannot
 * be read is set aside, whole. Desks that other windows left without the shelf's knowing go among the saved dives.
 */
export async function restoreDesk(shelf: Shelf, lastVisit: string | undefined): Promise<Restored> {
  const stored = await shelf.read(DESK);
  const record = readKept(deskKind, stored);
  const words = lastWords(deskKind);
  const candidates = [...(record ? [record] : []), ...words].sort(newestFirst);
  const chosen = candidates.find(({ visit }) => visit === lastVisit) ?? (lastVisit ? undefined : candidates[0]);
  const own = chosen || !lastVisit ? undefined : await ownLeftBehind(shelf, lastVisit);
  const onDesk = chosen ?? (own ? undefined : candidates[0]);

  const desk = onDesk ? { script: onDesk.script, view: onDesk.desk } : own;

  const spoilt = stored !== undefined && !record;
  const aside = `aside/${newName()}`;
  const found: StoredDive[] = [];
  if (spoilt || words.length > 0) {
    const writes: Record<string, unknown> = {};
    if (spoilt) Object.assign(writes, { [DESK]: undefined, [aside]: stored });
    const others = onDesk === record ? words : [...words, ...(record ? [record] : [])];
    for (const other of others) {
      if (other === onDesk || !worthKeeping(other, onDesk)) continue;
      const { dive, record: own } = leftBehind(other);
      Object.assign(writes, own);
      found.push(dive);
    }
    if (onDesk && onDesk !== record) writes[DESK] = onDesk;
    try {
      await shelf.change(DESK, () => writes);
      forgetLastWords(
        deskKind,
        words.map(({ visit }) => visit),
      );
    } catch {
      // No room: everything stays where it is, and the next writing of the desk says so.
      return { desk, revision: record?.revision, setAside: undefined, found: [] };
    }
  }
  return {
    desk,
    revision: onDesk?.revision,
    setAside: spoilt ? { name: aside, record: stored } : undefined,
    found: found.map(({ title }) => title),
  };
}

/** What says that it follows another is newer, whatever the clock said; else the clock decides. */
function newestFirst(one: DeskRecord, other: DeskRecord): number {
  if (one.follows === other.revision) return -1;
  if (other.follows === one.revision) return 1;
  return one.savedAt < other.savedAt ? 1 : -1;
}

/** Not worth a place among the saved dives: what the desk was made from, or the same dive with nobody steering. */
function worthKeeping(record: DeskRecord, onDesk: DeskRecord | undefined): boolean {
  const same = record.script === onDesk?.script && !record.desk?.run;
  return !same && record.revision !== onDesk?.follows;
}

/** What this window had on its desk when another window wrote over it. */
async function ownLeftBehind(shelf: Shelf, lastVisit: string) {
  const dive = storedDiveSchema.safeParse(await shelf.read(leftBehindBy(lastVisit))).data;
  return dive && { script: dive.script, view: viewOfSaved(dive) };
}

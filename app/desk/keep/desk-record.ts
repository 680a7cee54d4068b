import * as z from 'zod';
import { safeStorage } from '../../parts/safe-storage';
import { deskViewSchema } from './desk-view';

/** The desk as it is kept between visits, without being asked to. */
const deskRecordSchema = z.object({
  version: z.literal(1),
  /** Names this very writing of it. */
  revision: z.string(),
  /** The revision it was made from, if any. */
  follows: z.string().optional(),
  /** One opening of the desk in one window. */
  visit: z.string(),
  savedAt: z.iso.datetime(),
  script: z.string(),
  /** How the desk looked; passed over where it is no longer understood, since the dive is what matters. */
  desk: deskViewSchema.optional().catch(undefined),
});
export type DeskRecord = z.infer<typeof deskRecordSchema>;

/** The record, or undefined where what was stored is not one. */
export function readDeskRecord(stored: unknown): DeskRecord | undefined {
  return deskRecordSchema.safeParse(stored).data;
}

/** A name nobody else has: this also works where a page is not served securely. */
export function newName(): string {
  return `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 10)}`;
}

/** Last words of windows closed before the shelf had answered: one for each visit, kept where writing is instant. */
const LAST_WORDS = 'halftime.desk.last';

export function lastWords(): readonly DeskRecord[] {
  return Object.values(storedWords()).flatMap((stored) => readDeskRecord(stored) ?? []);
}

export function sayLastWords(record: DeskRecord): void {
  safeStorage.setItem(LAST_WORDS, JSON.stringify({ ...storedWords(), [record.visit]: record }));
}

export function forgetLastWords(visits: readonly string[]): void {
  const left = Object.entries(storedWords()).filter(([visit]) => !visits.includes(visit));
  if (left.length === 0) safeStorage.removeItem(LAST_WORDS);
  else safeStorage.setItem(LAST_WORDS, JSON.stringify(Object.fromEntries(left)));
}

function storedWords(): Record<string, unknown> {
  try {
    const read: unknown = JSON.parse((safeStorage.getItem(LAST_WORDS) as string | null) ?? '{}');
    return typeof read === 'object' && read !== null ? (read as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

import { cautions } from '@/content/cautions';
import { saveFile } from '../parts/save-file';
import { useStatus } from '../parts/status';
import type { RefusalReason } from './shelf';

/**
 * The one way in which work is kept on this machine. A kind of document, such as the desk, a bench sheet, a lesson in
 * the making or what was done in lessons, says what it is in a `DocumentKind`, and gets back:
 *
 * - `keptRecord` (kept-record.ts): one document in the browser's small storage, written at once and shown alike in every
 *   window;
 * - `startAutosave` (autosave.ts): documents on the shelf, each window having its own on show, written when it rests;
 * - `History` (history.ts): undo and redo, of any of them;
 * - what cannot be read, being spoilt or of a newer version, set aside whole, told of, and handed over as a file;
 * - why nothing could be kept, in the kind's own words.
 */
export interface DocumentKind<Value> {
  /** The name of its record; of many documents of one kind, how the names of their records begin. */
  readonly name: string;
  /** The form its records are written in; a larger number in a record is a newer version's. */
  readonly version: number;
  /** Makes a document of a record of this version, and refuses anything else. */
  readonly schema: RecordReader<Value>;
  /** Brings a record of an older form to this version, and leaves all others as they are. */
  readonly migrate?: (stored: object) => unknown;
  readonly words: {
    /** That a record can't be read, and what the screen does without it: one sentence. */
    readonly unread: string;
    /** Why nothing can be kept, and what to do about it. */
    readonly refused: Readonly<Record<RefusalReason, string>>;
    /** The name of the file in which a record that can't be read is handed over. */
    readonly fileName: string;
  };
}

/** A schema of zod's; or, where a record is taken piece by piece anyway, a plain reader, for which no checker is fetched. */
interface RecordReader<Value> {
  safeParse(record: unknown): { readonly data?: Value | undefined };
}

/** The document in a record of any shape; undefined where there is none that can be read. Never throws. */
export function readKept<Value>(
  { schema, migrate }: Pick<DocumentKind<Value>, 'schema' | 'migrate'>,
  stored: unknown,
): Value | undefined {
  const record = migrate && typeof stored === 'object' && stored !== null ? migrate(stored) : stored;
  return schema.safeParse(record).data;
}

/** Tells that a record lies aside; `fetch` finds it for the file it is handed over in. */
export function tellSetAside(kind: DocumentKind<unknown>, stored: unknown, fetch: () => Promise<unknown>): void {
  const newer = isNewer(kind, stored) ? ' It was written by a newer version of this page: reload while online.' : '';
  useStatus.getState().say(`${kind.words.unread} It is set aside, not lost.${newer}`, {
    label: 'Save it as a file',
    run: () => void fetch().then((record) => saveUnread(kind, { record })),
  });
}

/** Hands over records that can't be read, as they are. */
export function saveUnread({ words }: DocumentKind<unknown>, unread: object): void {
  saveFile(words.fileName, JSON.stringify({ caution: cautions.general, ...unread }, undefined, 1), 'application/json');
}

function isNewer({ version }: DocumentKind<unknown>, stored: unknown): boolean {
  const its = typeof stored === 'object' && stored !== null && 'version' in stored ? stored.version : undefined;
  return typeof its === 'number' && its > version;
}

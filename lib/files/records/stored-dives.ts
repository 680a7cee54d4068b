import * as z from 'zod';
import { cautions } from '../../../content/cautions';
import { sayIssue } from '../../quantity/schema-words';

/** A dive as it is kept between visits. What it says beyond this is kept as it is. */
export const storedDiveSchema = z.looseObject({
  id: z.string().min(1).max(100),
  title: z.string().max(200),
  script: z.string().max(1_000_000),
  /** When it was last changed, ISO 8601. */
  changedAt: z.iso.datetime({ offset: true }).optional(),
});
export type StoredDive = z.infer<typeof storedDiveSchema>;

const FORMAT = 'halftime dives';
const VERSION = 1;
const fileSchema = z.object({
  format: z.literal(FORMAT),
  version: z.number().int().min(1),
  dives: z.array(z.unknown()),
});

/** A record that could not be read, kept whole so that it can be written back. */
export interface UnreadRecord {
  /** Its place in the file, from 1. */
  readonly number: number;
  readonly what: string;
  readonly record: unknown;
}

export type StoredRead =
  | { readonly ok: true; readonly dives: readonly StoredDive[]; readonly unread: readonly UnreadRecord[] }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/** Writes saved dives, and records that could not be read before, as one file. */
export function writeStoredDives(
  dives: readonly StoredDive[],
  unread: readonly Pick<UnreadRecord, 'record'>[] = [],
): string {
  const records: unknown[] = [...dives, ...unread.map(({ record }) => record)];
  return `${JSON.stringify({ format: FORMAT, version: VERSION, caution: cautions.general, dives: records }, undefined, 1)}\n`;
}

/** Reads a file of saved dives. A record that is not sound is left out and told of; the others are read. Never throws. */
export function readStoredDives(text: string): StoredRead {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return {
      ok: false,
      what: 'The file is not sound JSON: a bracket, a comma or a quotation mark is missing in it, or it was cut off.',
      mend: 'Export the dives again, or choose another file.',
    };
  }
  const file = fileSchema.safeParse(json);
  if (!file.success)
    return {
      ok: false,
      what: 'The file is JSON, but not a file of saved dives.',
      mend: 'Choose a file that was exported here.',
    };
  if (file.data.version > VERSION) {
    return {
      ok: false,
      what: `The file is of version ${file.data.version}, and version ${VERSION} is read here.`,
      mend: 'Reload this page to get the newest version, and open the file again.',
    };
  }
  const dives: StoredDive[] = [];
  const unread: UnreadRecord[] = [];
  const ids = new Set<string>();
  file.data.dives.forEach((record, i) => {
    const read = storedDiveSchema.safeParse(record);
    if (!read.success) {
      const [issue] = read.error.issues;
      unread.push({
        number: i + 1,
        what: `${sayIssue(issue!)}.`,
        record,
      });
    } else if (ids.has(read.data.id)) unread.push({ number: i + 1, what: 'Another record has the same id.', record });
    else {
      ids.add(read.data.id);
      dives.push(read.data);
    }
  });
  return { ok: true, dives, unread };
}

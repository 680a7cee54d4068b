import * as z from 'zod';
import { readKept, type DocumentKind } from './document-kind';
import { newName } from './new-name';
import type { Unread } from './read-each';

/** What every document on the shelf says of its writing. */
export const stampSchema = z.object({
  version: z.literal(1),
  /** Names this very writing of it. */
  revision: z.string(),
  /** The revision it was made from, if any. */
  follows: z.string().optional(),
  /** The window it was written in, by a name made up each time it is opened. */
  visit: z.string(),
  savedAt: z.iso.datetime(),
});
export type Shelved<Content> = Content & z.infer<typeof stampSchema>;

/** A kind whose documents lie on the shelf, each window having its own on show. */
export interface ShelvedKind<Content> extends DocumentKind<Shelved<Content>> {
  /** Where the last words of closed windows lie in the small storage. */
  readonly lastWords: string;
  /** How a document that would be written over by another window's is kept: by the names of its records. */
  readonly beside: (overwritten: Shelved<Content>, by: Shelved<Content>) => Readonly<Record<string, unknown>>;
}

/** Under which name a window's last words about one document lie. */
export function speakerOf(
  kind: { readonly name: string },
  { visit, name = kind.name }: { visit: string; name?: string },
): string {
  return name === kind.name ? visit : `${visit} ${name}`;
}

/** What lies where a document is to be written, if that is not what it was made from. */
export function othersThere<Content>(
  kind: ShelvedKind<Content>,
  record: Shelved<Content>,
  stored: unknown,
): Shelved<Content> | undefined {
  const there = readKept(kind, stored);
  return there && there.revision !== record.follows ? there : undefined;
}

/** What lies where a document is to be written and can't be read here, such as a newer version's: one for each window that wrote it. */
export function unreadThere<Content>(kind: ShelvedKind<Content>, name: string, stored: unknown): Unread | undefined {
  if (stored === undefined || readKept(kind, stored)) return undefined;
  const visit = typeof stored === 'object' && stored !== null && 'visit' in stored ? stored.visit : undefined;
  return { name: typeof visit === 'string' ? `aside/${name}-${visit}` : `aside/${newName()}`, record: stored };
}

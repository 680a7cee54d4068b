import { readKept, type DocumentKind } from './document-kind';
import type { Shelf } from './shelf';

/** A record that can't be read here, such as a newer version's. */
export interface Unread {
  readonly name: string;
  readonly record: unknown;
}

/** Every document of a kind on the shelf; records that are none stay where they are, and are handed back with their names. */
export async function readEach<Value>(
  shelf: Shelf,
  kind: Pick<DocumentKind<Value>, 'name' | 'schema' | 'migrate'>,
): Promise<{ read: Value[]; unread: Unread[] }> {
  const read: Value[] = [];
  const unread: Unread[] = [];
  for (const [name, record] of await shelf.readAll(kind.name)) {
    const value = readKept(kind, record);
    if (value === undefined) unread.push({ name, record });
    else read.push(value);
  }
  return { read, unread };
}

import * as z from 'zod';
import { openShelf } from './open-shelf';

/** The name of the record of the desk. */
export const DESK = 'desk';

const withScript = z.object({ script: z.string() });

const withView = z.object({
  script: z.string(),
  desk: z.object({ covered: z.array(z.string()).catch([]), cursorS: z.number().catch(0), rules: z.unknown() }),
});

export interface DeskDive {
  readonly script: string;
  /** Readings that are covered there, by name. */
  readonly covered: readonly string[];
  /** Where its time cursor stood, s. */
  readonly cursorS: number;
  /** Rules of its units as they were kept, unread. */
  readonly rules: unknown;
}

/** The dive that was last on the desk as it stood there; undefined where none is kept. */
export async function diveOnDesk(): Promise<DeskDive | undefined> {
  const kept = await (await openShelf()).read(DESK);
  const read = withView.safeParse(kept);
  if (read.success) return { script: read.data.script, ...read.data.desk };
  const script = withScript.safeParse(kept).data?.script;
  return script === undefined ? undefined : { script, covered: [], cursorS: 0, rules: undefined };
}

/** The script that was last on the desk, for screens that go on from it; undefined where none is kept. */
export async function scriptOnDesk(): Promise<string | undefined> {
  return withScript.safeParse(await (await openShelf()).read(DESK)).data?.script;
}

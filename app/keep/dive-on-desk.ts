import * as z from 'zod';
import { openShelf } from './open-shelf';

/** The name of the record of the desk. */
export const DESK = 'desk';

const withScript = z.object({ script: z.string() });

/** The script that was last on the desk, for screens that go on from it; undefined where none is kept. */
export async function scriptOnDesk(): Promise<string | undefined> {
  return withScript.safeParse(await (await openShelf()).read(DESK)).data?.script;
}

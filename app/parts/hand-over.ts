import * as z from 'zod';
import { MOST_CHARACTERS } from '@/lib/dive/script';

/** Where another screen leaves a dive for the desk, in this window alone, until the desk has taken it. */
const NAME = 'halftime:hand-over';

/** The place in this site a dive came from, for the way back. */
const backSchema = z
  .string()
  .regex(/^\/[a-z]/)
  .max(200)
  .optional();

const handOverSchema = z.object({
  version: z.literal(1),
  script: z.string().min(1).max(MOST_CHARACTERS),
  /** What the dive is called. */
  title: z.string().max(200),
  back: backSchema,
});
export type HandOver = Omit<z.infer<typeof handOverSchema>, 'version'>;

/** Leaves a dive for the desk; false where the browser does not let it be kept. */
export function leaveForDesk(dive: HandOver): boolean {
  try {
    sessionStorage.setItem(NAME, JSON.stringify({ version: 1, ...dive }));
    return true;
  } catch {
    return false;
  }
}

/** The dive another screen left for the desk, once: it is gone afterwards. Undefined where there is none that can be read. */
export function takeHandOver(): HandOver | undefined {
  try {
    const stored = sessionStorage.getItem(NAME);
    if (stored === null) return undefined;
    sessionStorage.removeItem(NAME);
    return handOverSchema.safeParse(JSON.parse(stored)).data;
  } catch {
    return undefined;
  }
}

/** The way back from this visit to the desk: the one given from now on, else the one it had before a reload. */
export function wayBack(handed: Pick<HandOver, 'back'> | undefined): string | undefined {
  if (handed) history.replaceState({ ...(history.state as object | null), back: handed.back }, '');
  return backSchema.safeParse((history.state as { back?: unknown } | null)?.back).data;
}

import { safeSession } from '../../parts/safe-storage';

const NAME = 'halftime.desk.visit';

/** The name of this window's visit before a reload, if any; from now on it goes by the new one. */
export function changeVisit(visit: string): string | undefined {
  const before = safeSession.getItem(NAME) as string | null;
  safeSession.setItem(NAME, visit);
  return before ?? undefined;
}

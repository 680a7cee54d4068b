const NAME = 'halftime.desk.visit';

/** The name of this window's visit before a reload, if any; from now on it goes by the new one. */
export function changeVisit(visit: string): string | undefined {
  try {
    const before = sessionStorage.getItem(NAME) ?? undefined;
    sessionStorage.setItem(NAME, visit);
    return before;
  } catch {
    return undefined;
  }
}

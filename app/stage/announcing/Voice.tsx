import { fetchedLater } from '../../parts/fetched-later';

/** The voice of a dive: a page opens without it. */
export const Voice = fetchedLater(async () => (await import('../after-opening')).Announcer);

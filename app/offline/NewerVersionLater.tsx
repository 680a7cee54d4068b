'use client';

import { fetchedLater } from '../parts/fetched-later';

/** Where its code can't be had there is no newer version to tell of. */
const Nothing = () => null;

/** What keeps a copy of the site, once the page is there. */
export const NewerVersionLater = fetchedLater(async () => (await import('./NewerVersion')).NewerVersion, null, Nothing);

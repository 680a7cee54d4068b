'use client';

import { fetchedLater } from '../parts/fetched-later';

/** The page answers before the model is there; until then the plate stands as it came. */
export const PromiseLater = fetchedLater(async () => (await import('./PromiseFigure')).PromiseFigure);

'use client';

import { fetchedLater } from '../parts/fetched-later';
// With the page and not with the part that comes later: the plate is drawn before it answers.
import './PromisePlate.module.css';

/** The page answers before the model is there; until then the plate stands as it came. */
export const PromiseLater = fetchedLater(async () => (await import('./PromiseFigure')).PromiseFigure);

'use client';

import dynamic from 'next/dynamic';
import { StageWaiting } from '../player/stage/StageWaiting';

/** The workshop with all it needs to read and check lessons, fetched once it is opened. */
export const WorkshopLoader = dynamic(() => import('./Workshop').then((module) => module.Workshop), {
  ssr: false,
  loading: StageWaiting,
});

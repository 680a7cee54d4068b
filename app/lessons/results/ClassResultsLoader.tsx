'use client';

import dynamic from 'next/dynamic';
import { StageWaiting } from '../player/stage/StageWaiting';

/** The sheet of a class with all it needs to read lessons, fetched once it is opened. */
export const ClassResultsLoader = dynamic(() => import('./ClassResults').then((module) => module.ClassResults), {
  ssr: false,
  loading: StageWaiting,
});

'use client';

import { useState } from 'react';
import { scenarios } from '@/content/scenarios/scenarios';
import { fetchedLater } from '../parts/fetched-later';
import { DeskContext } from '../stage/desk-context';
import { createDeskStore } from '../stage/desk-store';
import { Playback } from '../stage/PlaybackBar';
import { OneSheet } from './OneSheet';

// The desk opens without what prints it.
const DeskSheet = fetchedLater(async () => (await import('./keep/keep-and-print')).DeskSheet);

/** The sandbox: a script, and the dive, the tissues and the readings it leads to. */
export function Desk() {
  const [store] = useState(() =>
    createDeskStore({ script: scenarios[0].script, pictures: ['profile', 'chase'], covered: [] }),
  );
  return (
    <DeskContext value={store}>
      <Playback />
      <DeskSheet />
      <OneSheet />
    </DeskContext>
  );
}

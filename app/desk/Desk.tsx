'use client';

import { useEffect, useState } from 'react';
import { scenarios } from '@/content/scenarios/scenarios';
import { replayEarlyPresses } from '../parts/early-presses';
import { fetchedLater } from '../parts/fetched-later';
import { DeskContext } from '../stage/desk-context';
import { createDeskStore } from '../stage/desk-store';
import { Playback } from '../stage/PlaybackBar';
import { OneSheet } from './OneSheet';

// The desk opens without what prints it.
const DeskSheet = fetchedLater(async () => (await import('./keep/after-opening')).DeskSheet);

/** The sandbox: a script, and the dive, the tissues and the readings it leads to. */
export function Desk() {
  const [store] = useState(() => {
    const [{ script, stillS }] = scenarios;
    const made = createDeskStore({ script, pictures: ['profile', 'chase'], covered: [] });
    made.getState().showStill(stillS);
    return made;
  });
  useEffect(replayEarlyPresses, []);
  return (
    <DeskContext value={store}>
      <Playback />
      <DeskSheet />
      <OneSheet />
    </DeskContext>
  );
}

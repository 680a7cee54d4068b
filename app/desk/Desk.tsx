'use client';

import { useEffect, useState } from 'react';
import { overstayed } from '@/content/scenarios/overstayed';
import { replayEarlyPresses } from '../parts/early-presses';
import { fetchedLater } from '../parts/fetched-later';
import type { PictureId } from '../pictures/picture-ids';
import { DeskContext } from '../stage/desk-context';
import { createDeskStore } from '../stage/desk-store';
import { pictures } from '../stage/figures/all';
import { Playback } from '../stage/PlaybackBar';
import { OneSheet } from './OneSheet';

// The desk opens without what prints it.
const DeskSheet = fetchedLater(async () => (await import('./keep/keep-and-print')).DeskSheet);

const titleOf = (id: PictureId) => pictures[id].title;

/** The sandbox: a script, and the dive, the tissues and the readings it leads to. */
export function Desk() {
  const [store] = useState(() =>
    createDeskStore(
      { script: overstayed.script, pictures: ['profile', 'chase'], covered: [] },
      false,
      overstayed.stillS,
    ),
  );
  useEffect(replayEarlyPresses, []);
  return (
    <DeskContext value={store}>
      <Playback titleOf={titleOf} />
      <DeskSheet />
      <OneSheet />
    </DeskContext>
  );
}

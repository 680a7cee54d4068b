'use client';

import { useState } from 'react';
import { fetchedLater } from '../parts/fetched-later';
import { PlaybackBar } from '../stage/PlaybackBar';
import { useSpaceKey } from './use-space-key';
import styles from './sheet.module.css';

const SteerPanel = fetchedLater(async () => (await import('./steer/SteerPanel')).SteerPanel);

/** What moves time along: playback of the script, or a hand on the lever. */
export function TimeControls() {
  const [steering, setSteering] = useState(false);
  return (
    <section className={styles.time} aria-label="Time controls" data-part="time">
      {steering ? (
        <SteerPanel onEnd={() => setSteering(false)} />
      ) : (
        <>
          <SpaceKey />
          <PlaybackBar onSteer={() => setSteering(true)} />
        </>
      )}
    </section>
  );
}

/** Only while the dive is played: before a class and under a hand on the lever, the key has another owner. */
function SpaceKey() {
  useSpaceKey();
  return null;
}

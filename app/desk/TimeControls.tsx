'use client';

import { useRef } from 'react';
import { fetchedLater } from '../parts/fetched-later';
import { useDesk } from '../stage/desk-context';
import { PlaybackBar } from '../stage/PlaybackBar';
import { useFocusAfterSteering } from './use-focus-after-steering';
import { useSpaceKey } from './use-space-key';
import styles from './sheet.module.css';

const SteerBar = fetchedLater(async () => (await import('./steer/hand')).SteerBar);

/** What moves time along: playback of the script, or a hand on the lever. */
export function TimeControls() {
  const steering = useDesk((state) => state.run !== undefined);
  const startRun = useDesk((state) => state.startRun);
  const section = useRef<HTMLElement>(null);
  useFocusAfterSteering(section, steering);
  return (
    <section ref={section} className={styles.time} aria-label="Time controls" data-part="time">
      {steering ? (
        <SteerBar />
      ) : (
        <>
          <SpaceKey />
          <PlaybackBar onSteer={startRun} />
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

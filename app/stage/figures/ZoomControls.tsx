'use client';

import { memo } from 'react';
import { Button } from '../../parts/Button';
import { IconButton } from '../../parts/IconButton';
import { useDesk, useDeskStore } from '../desk-context';
import { movedView, zoomedView } from '../view';
import styles from '../stage.module.css';

/** Looks closer at a stretch of time, around the cursor, in every picture at once. */
export const ZoomControls = memo(function ZoomControls() {
  const store = useDeskStore();
  const view = useDesk((state) => state.view);
  const setView = useDesk((state) => state.setView);
  const zoom = (factor: number) => {
    const { view: now, cursorS, scene } = store.getState();
    setView(zoomedView(now, scene.timeline.timeS.at(-1)!, cursorS, factor));
  };
  const move = (share: number) => {
    const { view: now, scene } = store.getState();
    setView(movedView(now, scene.timeline.timeS.at(-1)!, share));
  };
  return (
    <div className={styles.zoom} role="group" aria-label="Zoom in time">
      <IconButton icon="minus" label="Show more time" disabled={!view} onClick={() => zoom(2)} />
      <IconButton icon="plus" label="Look closer in time" onClick={() => zoom(0.5)} />
      {view && (
        <>
          <Button aria-label="Earlier part of the dive" onClick={() => move(-0.5)}>
            Earlier
          </Button>
          <Button aria-label="Later part of the dive" onClick={() => move(0.5)}>
            Later
          </Button>
          <Button aria-label="All of it: the whole dive" onClick={() => setView(undefined)}>
            All of it
          </Button>
        </>
      )}
    </div>
  );
});

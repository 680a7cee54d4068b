'use client';

import { useState } from 'react';
import { scenarios } from '@/content/scenarios/scenarios';
import { DeskContext, useDesk } from './desk-context';
import { createDeskStore } from './desk-store';
import { pictures } from './pictures/all';
import { PictureChooser } from './PictureChooser';
import { Playback, PlaybackBar } from './PlaybackBar';
import { ReadingsPanel } from './ReadingsPanel';
import { ScriptPanel } from './ScriptPanel';
import { SteerPanel } from './steer/SteerPanel';
import styles from './desk.module.css';

/** The sandbox: a script on the left; the dive, the tissues and the readings it leads to on the right. */
export function Desk() {
  const [store] = useState(() => createDeskStore({ script: scenarios[0].script, pictures: ['profile', 'chase'], covered: [] }));
  return (
    <DeskContext value={store}>
      <Playback />
      <div className={styles.desk}>
        <ScriptPanel />
        <div className={styles.stage}>
          <PictureChooser />
          <PictureWall />
          <TimeControls />
        </div>
        <ReadingsPanel />
      </div>
    </DeskContext>
  );
}

/** What moves time along: playback of the script, or a hand on the lever. */
function TimeControls() {
  const [steering, setSteering] = useState(false);
  return (
    <div className={styles.timeControls}>
      {steering ? <SteerPanel onEnd={() => setSteering(false)} /> : <PlaybackBar onSteer={() => setSteering(true)} />}
    </div>
  );
}

function PictureWall() {
  const shown = useDesk((state) => state.pictures);
  return (
    <div className={styles.wall}>
      {shown.map((id) => {
        const { Figure, wide } = pictures[id];
        return (
          <div key={id} className={wide ? styles.wide : styles.half}>
            <Figure />
          </div>
        );
      })}
    </div>
  );
}

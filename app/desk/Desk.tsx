'use client';

import { useState } from 'react';
import { scenarios } from '@/content/scenarios/scenarios';
import { DeskContext } from './desk-context';
import { createDeskStore } from './desk-store';
import { ChaseFigure } from './ChaseFigure';
import { PlaybackBar } from './PlaybackBar';
import { ProfileFigure } from './ProfileFigure';
import { ReadingsPanel } from './ReadingsPanel';
import { ScriptPanel } from './ScriptPanel';
import styles from './desk.module.css';

/** The sandbox: a script on the left; the dive, the tissues and the readings it leads to on the right. */
export function Desk() {
  const [store] = useState(() => createDeskStore(scenarios[0].script));
  return (
    <DeskContext value={store}>
      <div className={styles.desk}>
        <ScriptPanel />
        <div className={styles.stage}>
          <ProfileFigure />
          <PlaybackBar />
          <div className={styles.pair}>
            <ChaseFigure />
            <ReadingsPanel />
          </div>
        </div>
      </div>
    </DeskContext>
  );
}

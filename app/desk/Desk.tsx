'use client';

import { useCallback, useLayoutEffect, useRef, useState } from 'react';
import { scenarios } from '@/content/scenarios/scenarios';
import { CautionStrip } from '../parts/Caution';
import { fetchedLater } from '../parts/fetched-later';
import { DeskContext, useDesk, useDeskStore } from '../stage/desk-context';
import { createDeskStore } from '../stage/desk-store';
import { DeskBar } from './keep/DeskBar';
import type { KeptDesk } from './keep/use-kept-desk';
import type { PictureId } from '../pictures/picture-ids';
import { pictures } from '../stage/figures/all';
import { PictureChooser } from './PictureChooser';
import { Playback, PlaybackBar } from '../stage/PlaybackBar';
import type { PanelId } from '../stage/panel-ids';
import { isPicture } from './present/panels';
import { usePresented } from './present/use-presented';
import { ReadingsPanel } from '../stage/ReadingsPanel';
import { ScriptPanel } from './ScriptPanel';
import { useUndoKeys } from '../keep/use-undo-keys';
import styles from './desk.module.css';
import present from './present/present.module.css';

// The desk opens without what keeps it, prints it, steers it and shows it to a class.
const KeepDesk = fetchedLater(async () => (await import('./keep/after-opening')).KeepDesk);
const DeskSheet = fetchedLater(async () => (await import('./keep/after-opening')).DeskSheet);
const DeskWaysOut = fetchedLater(async () => (await import('../stage/why/DeskWaysOut')).DeskWaysOut);
const SteerPanel = fetchedLater(async () => (await import('./steer/SteerPanel')).SteerPanel);
const Presenter = fetchedLater(async () => (await import('./present/Presenter')).Presenter);

/** The sandbox: a script on the left; the dive, the tissues and the readings it leads to on the right. */
export function Desk() {
  const [store] = useState(() =>
    createDeskStore({ script: scenarios[0].script, pictures: ['profile', 'chase'], covered: [] }),
  );
  return (
    <DeskContext value={store}>
      <Playback />
      <DeskSheet />
      <DeskOnScreen />
    </DeskContext>
  );
}

/** The desk to work at or, before a class, only the panels chosen for it: the same parts, so that nothing in them is lost on the way. */
function DeskOnScreen() {
  const [kept, setKept] = useState<KeptDesk>({ kept: 'opening', notice: undefined, putAway: () => undefined });
  const { undo, redo } = useDeskStore().getState();
  useUndoKeys(undo, redo);
  const stage = useRef<HTMLDivElement>(null);
  const [presenting, setPresenting] = useState(false);
  const leave = useCallback(() => {
    setPresenting(false);
    requestAnimationFrame(() => stage.current?.querySelector<HTMLElement>('[data-way="present"]')?.focus());
  }, []);
  const deskPictures = useDesk((state) => state.pictures);
  const panels = usePresented();
  const shows = (panel: PanelId) => !presenting || panels.includes(panel);
  const shown = presenting ? panels.filter(isPicture) : deskPictures;

  return (
    <div ref={stage} tabIndex={-1} className={`${presenting ? present.stage : ''} unprinted`}>
      <KeepDesk tell={setKept} />
      <DeskWaysOut />
      {presenting ? <CautionStrip /> : <DeskBar {...kept} onPresent={() => setPresenting(true)} />}
      <div className={presenting ? present.panels : styles.desk}>
        {shows('script') && <ScriptPanel />}
        <div className={presenting ? present.pictures : styles.stage}>
          {!presenting && <PictureChooser />}
          <PictureWall shown={shown} />
          <TimeControls hidden={!shows('time')} />
        </div>
        {shows('readings') && <ReadingsPanel />}
      </div>
      {presenting && <Presenter stage={stage} onLeave={leave} />}
    </div>
  );
}

/** What moves time along: playback of the script, or a hand on the lever. */
function TimeControls({ hidden }: { hidden: boolean }) {
  const [steering, setSteering] = useState(false);
  // By a class and not by `:has`, which would be asked anew at every change of the page.
  useLayoutEffect(() => {
    const { classList } = document.documentElement;
    classList.add(styles.aboveTimeControls!);
    return () => classList.remove(styles.aboveTimeControls!);
  }, []);
  return (
    <div className={styles.timeControls} hidden={hidden}>
      {steering ? <SteerPanel onEnd={() => setSteering(false)} /> : <PlaybackBar onSteer={() => setSteering(true)} />}
    </div>
  );
}

function PictureWall({ shown }: { shown: readonly PictureId[] }) {
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

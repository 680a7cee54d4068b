'use client';

import { useCallback, useLayoutEffect, useRef, useState } from 'react';
import { fetchedLater } from '../parts/fetched-later';
import { useStatus } from '../parts/status';
import { useDesk, useDeskStore } from '../stage/desk-context';
import type { PanelId } from '../stage/panel-ids';
import { PictureRoom } from '../stage/PictureRoom';
import { DeskLine } from './DeskLine';
import { Drawer, type DrawerId } from './Drawer';
import { InsistLine } from './InsistLine';
import type { KeptDesk } from './keep/use-kept-desk';
import { isPicture } from './present/panels';
import { usePresented } from './present/use-presented';
import { ReadingStrip } from './ReadingStrip';
import { TimeControls } from './TimeControls';
import { TourOffer } from './tour/TourOffer';
import { useUndoKeys } from '../keep/use-undo-keys';
import { useFitsDrawer } from './use-fits-drawer';
import { useWorkingPlace } from './use-working-place';
import styles from './sheet.module.css';

// The desk opens without what keeps it and shows it to a class.
const DeskWaysOut = fetchedLater(async () => (await import('../stage/why/DeskWaysOut')).DeskWaysOut);
const PictureChooser = fetchedLater(async () => (await import('./keep/keep-and-print')).PictureChooser);
const KeepDesk = fetchedLater(async () => (await import('./keep/keep-and-print')).KeepDesk);
const Tour = fetchedLater(async () => (await import('./tour/Tour')).Tour);
const SteerLever = fetchedLater(async () => (await import('./steer/hand')).SteerLever);
const Presenter = fetchedLater(async () => (await import('./present/Presenter')).Presenter);

const CHOOSER = <PictureChooser />;

/** The button of the tour or, where it is folded away, what it is folded into. */
const TO_TOUR = '[data-way="tour"], [aria-label="Tools of the desk"]';

/**
 * Cause and effect in one look: what is read, the pictures and the hand on time, composed to the height of the window.
 * The script stands in a drawer; before a class the same parts stand without their tools, so that nothing in them is
 * lost on the way. Time comes first in the document, where the keyboard finds it, and last on the sheet.
 */
export function OneSheet() {
  const [kept, setKept] = useState<KeptDesk>({ kept: 'opening', notice: undefined, putAway: () => undefined });
  const store = useDeskStore();
  const { undo, redo } = store.getState();
  useUndoKeys(undo, redo);
  const sheet = useRef<HTMLDivElement>(null);
  const [presenting, setPresenting] = useState(false);
  const present = () => {
    // A still is for whoever opens a dive; a class is led through it from the start.
    if (store.getState().atStill) store.getState().setCursor(0);
    setPresenting(true);
  };
  const leave = useCallback(() => {
    setPresenting(false);
    requestAnimationFrame(() => visibleIn(sheet.current, '[data-way="present"]')?.focus());
  }, []);
  useWorkingPlace(sheet);
  const steering = useDesk((state) => state.run !== undefined);
  const deskPictures = useDesk((state) => state.pictures);
  const panels = usePresented();
  const [chosen, choose] = useState<DrawerId | 'none'>();
  const [touring, tour] = useState(false);
  const toTour = () => visibleIn(sheet.current, TO_TOUR)?.focus();
  const refused = () => {
    toTour();
    useStatus.getState().say('The tour stays here, under “Tour”.');
  };
  const fits = useFitsDrawer(sheet);
  const drawer = presenting ? (panels.includes('script') ? 'script' : 'none') : chosen;
  const toggle = (id: DrawerId) => choose((chosen ?? (fits ? 'script' : 'none')) === id ? 'none' : id);
  const shows = (panel: PanelId) => !presenting || panels.includes(panel);
  const shown = presenting ? panels.filter(isPicture) : deskPictures;

  // What a "why?" answers stands where the drawer stood. By a class and not by `:has`, which would be asked anew at
  // every change of the page.
  useLayoutEffect(() => {
    const { classList } = document.documentElement;
    classList.add(styles.besideWorking!);
    return () => classList.remove(styles.besideWorking!);
  }, []);

  return (
    <div
      ref={sheet}
      tabIndex={-1}
      className={`${styles.sheet} unprinted`}
      data-drawer={drawer ?? 'as it fits'}
      data-presented={presenting || undefined}
    >
      <KeepDesk tell={setKept} />
      <DeskWaysOut />
      {presenting ? <Presenter stage={sheet} onLeave={leave} /> : <TimeControls />}
      {steering && <SteerLever />}
      {!presenting && (
        <DeskLine
          {...kept}
          drawer={drawer ?? (fits ? 'script' : 'none')}
          onDrawer={toggle}
          onPresent={present}
          onTour={() => tour(true)}
        />
      )}
      <div className={styles.figures} data-place="figures" hidden={!shows('readings')}>
        <ReadingStrip />
        <InsistLine presenting={presenting}>
          {!presenting && <TourOffer onShow={() => tour(true)} onRefused={refused} />}
        </InsistLine>
      </div>
      <div className={styles.room}>
        <PictureRoom shown={shown} chooser={CHOOSER} />
      </div>
      <Drawer shown={drawer ?? 'script'} onClose={() => choose('none')} />
      {touring && (
        <Tour
          onEnd={() => {
            tour(false);
            toTour();
          }}
        />
      )}
    </div>
  );
}

/** Of the buttons for one thing, folded away or not, the one that is seen. */
function visibleIn(sheet: HTMLElement | null, selector: string): HTMLElement | undefined {
  return Array.from(sheet?.querySelectorAll<HTMLElement>(selector) ?? []).find(({ offsetParent }) => offsetParent);
}

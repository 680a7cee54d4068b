import { useState } from 'react';
import { AlonePage, NothingAlone } from '../parts/alone/AlonePage';
import { Disclosure } from '../parts/Disclosure';
import { deskWith } from '../parts/routes';
import { DeskContext } from '../stage/desk-context';
import type { DeskStore } from '../stage/desk-store';
import { ChaseFigure } from '../stage/figures/ChaseFigure';
import { ProfileFigure } from '../stage/figures/ProfileFigure';
import { Playback, PlaybackBar } from '../stage/PlaybackBar';
import type { ReadingId } from '../stage/reading-ids';
import { ReadingsPanel } from '../stage/ReadingsPanel';
import { UnitInsists } from '../stage/units/UnitInsists';
import { UnitsFigure } from '../stage/units/UnitsFigure';
import type { OpenedPage } from './opened-page';
import styles from './alone.module.css';

/** What has to be seen together with the pictures, as on the desk. */
const READINGS: readonly ReadingId[] = ['depth', 'time', 'no-stop', 'ceiling', 'required-stop', 'rate'];

/** A dive to be looked at and played, with nothing else of the site about it. */
export function DiveAlone({ opened }: { opened: OpenedPage }) {
  return opened.ok ? <Opened {...opened} /> : <NothingAlone title="No dive to show" {...opened} />;
}

function Opened({ store, title, onDesk, note }: Extract<OpenedPage, { ok: true }>) {
  const [script] = useState(() => store.getState().script);
  const besides = useSecondUnits(store);
  return (
    <DeskContext value={store}>
      <Playback />
      <AlonePage title={title} onSite={onDesk === undefined ? undefined : deskWith(onDesk)}>
        {note && <p role="status">{note}</p>}
        <div className={styles.readings}>
          <ReadingsPanel only={READINGS} strip />
        </div>
        <div className={styles.insists}>
          <UnitInsists />
        </div>
        <div className={styles.pictures}>
          <ProfileFigure />
          <ChaseFigure />
        </div>
        {besides && <UnitsFigure />}
        <div className={styles.time}>
          <PlaybackBar />
        </div>
        <Disclosure summary="The script of this dive">
          <pre className={styles.script}>{script}</pre>
        </Disclosure>
      </AlonePage>
    </DeskContext>
  );
}

/** Units that the script names beside the one set right, or that the desk had side by side. */
function useSecondUnits(store: DeskStore): boolean {
  const [shown] = useState(() => {
    const { scene, pictures } = store.getState();
    return scene.setups.length > 1 || pictures.includes('units');
  });
  return shown;
}

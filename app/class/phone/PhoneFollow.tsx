'use client';

import { useEffect, useState } from 'react';
import type { Follow } from '@/lib/class/class-state';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import type { PictureId } from '../../pictures/picture-ids';
import { Voice } from '../../stage/announcing/Voice';
import { DeskContext, useDesk, useDeskStore } from '../../stage/desk-context';
import { createDeskStore } from '../../stage/desk-store';
import { Playback, PlaybackBar } from '../../stage/PlaybackBar';
import { READING_IDS, type ReadingId } from '../../stage/reading-ids';
import { ReadingsPanel } from '../../stage/ReadingsPanel';
import { DiveShown } from '../shown/DiveShown';
import { usePhone } from './phone-line';
import styles from './phone.module.css';

const SHOWN: readonly PictureId[] = ['profile', 'chase'];
const READ: readonly ReadingId[] = ['depth', 'time', 'no-stop', 'ceiling', 'required-stop', 'time-to-surface'];

/** The dive on the wall, at the teacher's hand; or one's own to try, until the teacher calls back. */
export function PhoneFollow({ follow }: { follow: Follow }) {
  const { mode, title, script, covered } = follow;
  const isFree = mode === 'free';
  return (
    <UnitsFrame>
      <section aria-labelledby="followed" className={styles.question}>
        <h2 id="followed">{title}</h2>
        <p role="status">
          {isFree
            ? 'Free: move through the dive, drag its points, and see. Your teacher calls you back.'
            : 'You see what is on the wall, at the same moment.'}
        </p>
        <Followed key={`${mode} ${script}`} script={script} covered={covered} isFree={isFree} />
      </section>
    </UnitsFrame>
  );
}

function Followed({ script, covered, isFree }: { script: string; covered: readonly string[]; isFree: boolean }) {
  const [store] = useState(() =>
    createDeskStore({ script, pictures: SHOWN, covered: READING_IDS.filter((id) => covered.includes(id)) }, !isFree),
  );
  return (
    <DeskContext value={store}>
      {isFree ? (
        <Playback />
      ) : (
        <>
          <AtTheHand covered={covered} />
          <Voice led />
        </>
      )}
      <DiveShown pictures={SHOWN} />
      {isFree && <PlaybackBar />}
      <div className={styles.readings}>
        <ReadingsPanel only={READ} />
      </div>
    </DeskContext>
  );
}

/** Keeps the cursor where the teacher's is, and covers what is covered there. */
function AtTheHand({ covered }: { covered: readonly string[] }) {
  const store = useDeskStore();
  const atS = usePhone((state) => state.atS);
  const now = useDesk((state) => state.covered);
  const hidden = READING_IDS.filter((id) => covered.includes(id));
  useEffect(() => store.getState().setCursor(atS), [store, atS]);
  const key = hidden.join();
  useEffect(() => {
    if (now.join() !== key)
      store.getState().change({ covered: READING_IDS.filter((id) => key.split(',').includes(id)) });
  }, [store, now, key]);
  return null;
}

'use client';

import { useState } from 'react';
import { Button } from '../parts/Button';
import { fetchedLater } from '../parts/fetched-later';
import { BringContext, useBring } from './bring-context';
import { createBringStore } from './bring-store';
import type { Session } from './brought';
import { ChooseFile, type SampleFile } from './steps/ChooseFile';
import { workerSession } from './worker-session';
import styles from './bring.module.css';

// Nothing of them shows before a file is chosen.
const Steps = fetchedLater(async () => (await import('./steps/Steps')).Steps);

/** A recorded dive on its way to the desk: found, mended by consent, drawn, explained, handed over. */
export function BringScreen({ samples, session }: { samples: readonly SampleFile[]; session?: Session }) {
  const [store] = useState(() => createBringStore(session ?? workerSession()));
  return (
    <BringContext value={store}>
      <div className={styles.bring}>
        <ChooseFile samples={samples} />
        <Standing />
        <Steps />
      </div>
    </BringContext>
  );
}

const DOING = {
  reading: 'Reading the file',
  making: 'Working out the dive',
  explaining: 'Searching for the settings',
} as const;

/** What is under way, with a way to stop it; what went wrong, with how to mend it. */
function Standing() {
  const busy = useBring((state) => state.busy);
  const trouble = useBring((state) => state.trouble);
  const cancel = useBring((state) => state.cancel);
  return (
    <>
      <div className={styles.standing} role="status">
        {busy && (
          <>
            <label>
              {DOING[busy.with]}
              {busy.part === undefined ? '' : `, ${Math.floor(busy.part * 100)}%`}
              <progress max={1} {...(busy.part !== undefined && { value: busy.part })} />
            </label>
            {busy.with !== 'making' && <Button onClick={cancel}>Stop</Button>}
          </>
        )}
      </div>
      {trouble && (
        <p className={styles.trouble} role="alert">
          <strong>{trouble.what}</strong> {trouble.mend}
        </p>
      )}
    </>
  );
}

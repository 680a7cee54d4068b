'use client';

import type { ReactNode } from 'react';
import { fetchedLater } from '../parts/fetched-later';
import { usePreferences } from '../parts/preferences';
import { StatusRegion } from '../parts/StatusRegion';
import { useStatus } from '../parts/status';
import styles from './sheet.module.css';

const HoldAtEvents = fetchedLater(async () => (await import('../stage/after-opening')).HoldAtEvents);
const HeldHere = fetchedLater(async () => (await import('./keep/keep-and-print')).HeldHere);
const UnitInsists = fetchedLater(async () => (await import('../stage/after-opening')).UnitInsists);

/** One line kept free for what an instrument would insist on, and for what the desk has just done. */
export function InsistLine({ presenting, children }: { presenting: boolean; children: ReactNode }) {
  const holds = usePreferences((state) => state.holds[presenting ? 'class' : 'desk']);
  const saying = useStatus((status) => status.message !== undefined);
  return (
    <div className={styles.insist} data-part="insist">
      <UnitInsists />
      {holds && <HoldAtEvents />}
      {holds && !presenting && <HeldHere />}
      {!saying && children}
      <StatusRegion inLine />
    </div>
  );
}

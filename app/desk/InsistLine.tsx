'use client';

import type { ReactNode } from 'react';
import { fetchedLater } from '../parts/fetched-later';
import { StatusRegion } from '../parts/StatusRegion';
import { useStatus } from '../parts/status';
import styles from './sheet.module.css';

const UnitInsists = fetchedLater(async () => (await import('../stage/after-opening')).UnitInsists);

/** One line kept free for what an instrument would insist on, and for what the desk has just done. */
export function InsistLine({ children }: { children: ReactNode }) {
  const saying = useStatus((status) => status.message !== undefined);
  return (
    <div className={styles.insist} data-part="insist">
      <UnitInsists />
      {!saying && children}
      <StatusRegion inLine />
    </div>
  );
}

'use client';

import { createContext, useContext, type ReactNode } from 'react';
import { CautionStrip } from './Caution';
import { isLessonPage } from './lesson-paths';
import { isWithin, routes } from './routes';
import { useHere } from './use-here';
import styles from './Shell.module.css';

const SheetFoot = createContext<ReactNode>(null);

interface ShellProps {
  head: ReactNode;
  foot: ReactNode;
  /** For a browser that runs no scripts. */
  unscripted: ReactNode;
  /** Says what the app has just done; the desk has a place of its own for it. */
  status: ReactNode;
  children: ReactNode;
}

/**
 * What stands around every screen. A screen on one sheet has the whole window under the caution: it draws the line at
 * the top itself, and puts the foot where it has room.
 */
export function Shell({ head, foot, unscripted, status, children }: ShellProps) {
  const here = useHere();
  const onDesk = isWithin(here, routes.desk.path);
  const onOneSheet = onDesk || isLessonPage(here);
  return (
    <>
      <div className={onOneSheet ? `${styles.shell} ${styles.sheet}` : styles.shell}>
        <CautionStrip />
        {unscripted}
        {!onOneSheet && head}
        <main id="main" tabIndex={-1}>
          <SheetFoot value={foot}>{children}</SheetFoot>
        </main>
        {foot}
      </div>
      {!onDesk && status}
    </>
  );
}

/** The foot of every page, for a screen on one sheet. */
export function useSheetFoot(): ReactNode {
  return useContext(SheetFoot);
}

'use client';

import { IconButton } from '../parts/IconButton';
import { useSheetFoot } from '../parts/Shell';
import { FurtherReadings } from './ReadingStrip';
import { ScriptPanel } from './ScriptPanel';
import styles from './sheet.module.css';

export type DrawerId = 'script' | 'readings';

/** Beside the pictures: the script, or the readings that are not on the strip. */
export function Drawer({ shown, onClose }: { shown: DrawerId | 'none'; onClose: () => void }) {
  const foot = useSheetFoot();
  return (
    <div className={styles.drawer}>
      <span className={styles.closeDrawer}>
        <IconButton icon="close" label="Close the drawer" onClick={onClose} />
      </span>
      {shown === 'readings' ? <FurtherReadings /> : <ScriptPanel />}
      {foot}
    </div>
  );
}

import type { ReactNode } from 'react';
import styles from '../curves.module.css';

interface PlateSheetProps {
  /** What is chosen, beside the plot and after it on a phone. */
  controls: ReactNode;
  children: ReactNode;
}

/** One plate of the atlas: its plots first, its controls at their side. */
export function PlateSheet({ controls, children }: PlateSheetProps) {
  return (
    <div className={styles.sheet}>
      <div className={styles.plots}>{children}</div>
      <div className={`${styles.controls} unprinted`}>{controls}</div>
    </div>
  );
}

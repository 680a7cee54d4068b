import type { ReactNode } from 'react';
import styles from './Notice.module.css';

/** A screen with one thing to say: nothing here, or something went wrong. */
export function Notice({ title, children, actions }: { title: string; children: ReactNode; actions: ReactNode }) {
  return (
    <div className={styles.notice}>
      <svg viewBox="0 0 240 90" aria-hidden="true" focusable="false">
        <path className={styles.surface} d="M4 12h232" />
        <path className={styles.line} d="M20 12 60 74h60l22-30h30l14-18h22" />
        <circle className={styles.end} cx="208" cy="26" r="4" />
      </svg>
      <h1>{title}</h1>
      {children}
      <div className={styles.actions}>{actions}</div>
    </div>
  );
}

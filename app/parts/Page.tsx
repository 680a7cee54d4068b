import type { ReactNode } from 'react';
import styles from './Page.module.css';

interface PageProps {
  title: ReactNode;
  /** A sentence or two under the title. */
  lead?: ReactNode;
  children: ReactNode;
}

/** A screen that is read from the top: title, lead, and a column no wider than a sheet. */
export function Page({ title, lead, children }: PageProps) {
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <h1>{title}</h1>
        {lead && <p>{lead}</p>}
      </header>
      {children}
    </div>
  );
}

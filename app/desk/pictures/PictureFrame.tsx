'use client';

import { useState, type ReactNode } from 'react';
import { DataTable, type TableColumn } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import styles from './pictures.module.css';

interface PictureFrameProps<Row> {
  title: string;
  /** What the picture shows, in one sentence that stands alone. */
  sentence: string;
  children: ReactNode;
  /** Buttons beside the title. */
  actions?: ReactNode;
  columns: readonly TableColumn<Row>[];
  /** Worked out only once the table is opened: it may be long, and the dive may be changing under a finger. */
  rows: () => readonly Row[];
}

/** A picture of the desk: its title, what it says in a sentence, and the table behind it. */
export function PictureFrame<Row>({ title, sentence, children, actions, columns, rows }: PictureFrameProps<Row>) {
  const [open, setOpen] = useState(false);
  return (
    <figure className={styles.frame} aria-label={title}>
      <figcaption>
        <h2>{title}</h2>
        <p>{sentence}</p>
        {actions}
      </figcaption>
      {children}
      <Disclosure summary="Read it as a table" onToggle={setOpen}>
        {open && <DataTable caption={title} columns={columns} rows={rows()} />}
      </Disclosure>
    </figure>
  );
}

'use client';

import { memo, useId, useState, type ReactNode } from 'react';
import { DataTable, type TableColumn } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { PictureFoot } from './PictureFoot';
import type { PictureId } from '../../pictures/picture-ids';
import styles from '../../pictures/pictures.module.css';

interface PictureFrameProps<Row> {
  id: PictureId;
  title: string;
  /** What the picture shows at the time cursor, in a sentence or two that stand alone. */
  sentence: string;
  /** The picture. */
  children: ReactNode;
  /** Buttons beside the title. */
  actions?: ReactNode;
  /** A long table of a whole dive should keep these two the same while only the cursor moves: it is then not drawn again. */
  columns: readonly TableColumn<Row>[];
  /** Worked out only once the table is opened: it may be long, and the dive may be changing under a finger. */
  rows: () => readonly Row[];
}

/** A picture of the desk: its title, what it says in a sentence, and the table behind it. */
export function PictureFrame<Row>({ id, title, sentence, children, actions, columns, rows }: PictureFrameProps<Row>) {
  const [open, setOpen] = useState(false);
  const sentenceId = useId();
  return (
    <figure className={styles.frame} aria-label={title} aria-describedby={sentenceId}>
      <figcaption>
        <h2>{title}</h2>
        {actions}
        <p id={sentenceId}>{sentence}</p>
      </figcaption>
      <div data-picture={id} className={styles.plate}>
        {children}
      </div>
      <PictureFoot title={title}>
        <Disclosure summary="Read it as a table" onToggle={setOpen}>
          {open && <FrameTable title={title} columns={columns} rows={rows} />}
        </Disclosure>
      </PictureFoot>
    </figure>
  );
}

interface FrameTableProps<Row> {
  title: string;
  columns: readonly TableColumn<Row>[];
  rows: () => readonly Row[];
}

function DrawnTable<Row>({ title, columns, rows }: FrameTableProps<Row>) {
  return <DataTable caption={title} columns={columns} rows={rows()} />;
}

const FrameTable = memo(DrawnTable) as typeof DrawnTable;

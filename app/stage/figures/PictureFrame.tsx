'use client';

import { memo, useContext, useId, useState, type ReactNode } from 'react';
import { Button } from '../../parts/Button';
import { DataTable, type TableColumn } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { tableOf } from '../../parts/ChartFrame';
import { Menu } from '../../parts/Menu';
import type { PictureId } from '../../pictures/picture-ids';
import { PictureFoot } from './PictureFoot';
import { RoomContext } from './room';
import { SavePicture } from './SavePicture';
import styles from '../../pictures/frame.module.css';

interface PictureFrameProps<Row> {
  id: PictureId;
  title: string;
  /** What the picture shows at the time cursor, in a sentence or two that stand alone. */
  sentence: string;
  /** The picture. */
  children: ReactNode;
  /** Tools of the picture: beside the title or, where the picture fills its room, in its menu. */
  actions?: ReactNode;
  /** What is always at hand beside the title. */
  beside?: ReactNode;
  /** A long table of a whole dive should keep these two the same while only the cursor moves: it is then not drawn again. */
  columns: readonly TableColumn<Row>[];
  /** Worked out only once the table is opened: it may be long, and the dive may be changing under a finger. */
  rows: () => readonly Row[];
  /** Which row is brought out; one of its cells has to say why. */
  marked?: (row: Row) => boolean;
}

/** A picture of the desk: its title, what it says in a sentence, and the table behind it. */
export function PictureFrame<Row>(props: PictureFrameProps<Row>) {
  const { id, title, sentence, children, actions, beside, columns, rows, marked } = props;
  const room = useContext(RoomContext);
  const [open, setOpen] = useState(false);
  const sentenceId = useId();
  if (!room)
    return (
      <figure className={styles.frame} aria-label={title} aria-describedby={sentenceId}>
        <figcaption>
          <h2>{title}</h2>
          {(actions ?? beside) && (
            <div className={styles.ask}>
              {actions}
              {beside}
            </div>
          )}
          <p id={sentenceId}>{sentence}</p>
        </figcaption>
        <div data-picture={id} className={styles.plate}>
          {children}
        </div>
        <PictureFoot title={title}>
          <Disclosure summary={tableOf(title)} onToggle={setOpen}>
            {open && <FrameTable title={title} columns={columns} rows={rows} marked={marked} />}
          </Disclosure>
        </PictureFoot>
      </figure>
    );
  return (
    <figure className={`${styles.frame} ${styles.filled}`} aria-label={title} aria-describedby={sentenceId}>
      <figcaption>
        <h2 className={room.tabs ? 'spoken' : undefined}>{title}</h2>
        {room.tabs}
        <p id={sentenceId} title={sentence}>
          {sentence}
        </p>
        {beside}
        <Menu icon="more" label={`Tools of ${title}`}>
          {actions}
          <Button data-done="" aria-pressed={open} icon="table" onClick={() => setOpen(!open)}>
            {tableOf(title)}
          </Button>
          <SavePicture title={title} />
          {room.choose}
        </Menu>
      </figcaption>
      {/* The drawing keeps its place under the table, so that it can still be saved. */}
      <div data-picture={id} className={styles.plate}>
        {children}
        {open && (
          <div className={styles.tableOver}>
            <Button onClick={() => setOpen(false)}>Back to the picture</Button>
            <FrameTable title={title} columns={columns} rows={rows} marked={marked} />
          </div>
        )}
      </div>
    </figure>
  );
}

interface FrameTableProps<Row> {
  title: string;
  columns: readonly TableColumn<Row>[];
  rows: () => readonly Row[];
  marked: ((row: Row) => boolean) | undefined;
}

function DrawnTable<Row>({ title, columns, rows, marked }: FrameTableProps<Row>) {
  const drawn = rows();
  return (
    <DataTable
      caption={title}
      columns={columns}
      rows={drawn}
      marked={marked && drawn.findIndex((row) => marked(row))}
    />
  );
}

const FrameTable = memo(DrawnTable) as typeof DrawnTable;

'use client';

import { useId, useState, type ReactNode } from 'react';
import { useWidth } from '../pictures/hand/use-width';
import { tableOf } from '../parts/ChartFrame';
import frame from '../parts/ChartFrame.module.css';
import { DataTable, type TableColumn } from '../parts/DataTable';
import { Disclosure } from '../parts/Disclosure';
import { PrintSheet } from '../parts/PrintSheet';
import { SaveCurve } from './SaveCurve';
import styles from './curves.module.css';

interface CurveFigureProps<Row> {
  title: string;
  /** What the picture shows and under which conditions: it stands alone, on paper too. */
  sentence: string;
  /** The picture for a width. It is drawn again for the printed sheet. */
  picture: (width: number) => ReactNode;
  /** What each line is, printed with the picture. */
  legend?: ReactNode;
  /** The cursor and what it reads. */
  children?: ReactNode;
  columns: readonly TableColumn<Row>[];
  /** Worked out once the table is opened or printed. */
  rows: () => readonly Row[];
  source?: string;
}

const PRINTED_WIDTH = 680;

/** A curve with its title, its words, its table, and ways to take it along: as a file and on paper. */
export function CurveFigure<Row>({
  title,
  sentence,
  picture,
  legend,
  children,
  columns,
  rows,
  source,
}: CurveFigureProps<Row>) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const { ref, width } = useWidth<HTMLDivElement>(640);
  return (
    <figure className={frame.frame} aria-label={title} aria-describedby={`${id}-sentence`}>
      <figcaption className={frame.caption}>
        <h3 className={styles.figureTitle}>{title}</h3>
        <p id={`${id}-sentence`}>{sentence}</p>
      </figcaption>
      <div className={frame.picture}>
        <div ref={ref} data-picture="">
          {picture(width)}
        </div>
        {legend}
        {children}
      </div>
      <div className={frame.foot}>
        <Disclosure summary={tableOf(title)} onToggle={setOpen}>
          {open && <DataTable caption={title} columns={columns} rows={rows()} />}
        </Disclosure>
        <div className={`${styles.actions} unprinted`}>
          <PrintSheet label={`Print “${title}”`} title={title}>
            {() => (
              <>
                <p>{sentence}</p>
                {picture(PRINTED_WIDTH)}
                {legend}
                <DataTable caption={title} columns={columns} rows={rows()} />
                {source && <p>{source}</p>}
              </>
            )}
          </PrintSheet>
          <SaveCurve title={title} />
        </div>
        {source && <p className={frame.source}>{source}</p>}
      </div>
    </figure>
  );
}

'use client';

import { useId, useState, type ReactNode } from 'react';
import { useWidth } from '../../parts/use-width';
import { tableOf } from '../../parts/ChartFrame';
import frame from '../../parts/ChartFrame.module.css';
import { DataTable, type TableColumn } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { PrintSheet } from '../../parts/PrintSheet';
import { SaveCurve } from './SaveCurve';
import { usePlotHeight } from './use-plot-height';
import styles from '../curves.module.css';

interface CurveFigureProps<Row> {
  title: string;
  /** Its title stands over it: there is another on its plate. */
  beside?: boolean;
  /** What the picture shows and under which conditions: it stands alone, on paper too. */
  sentence: string;
  /** What it reads where the cursor is. The readings say it to those who see, once; to others the figure does. */
  said: string;
  /** The picture for a width and a height. It is drawn again for the printed sheet. */
  picture: (width: number, height: number) => ReactNode;
  /** As tall as it is worth to be. */
  most?: number;
  /** What each line is, where their names have no room beside them. */
  legend?: ReactNode;
  /** The cursor and what it reads. */
  children?: ReactNode;
  columns: readonly TableColumn<Row>[];
  /** Worked out once the table is opened or printed. */
  rows: () => readonly Row[];
  source?: string;
}

const PRINTED = { width: 680, height: 420 };
const MOST = 480;
/** The height of a title and of words that break. */
const TITLE = 64;

/** A curve with its words, its table, and ways to take it along: as a file and on paper. */
export function CurveFigure<Row>({
  title,
  beside = false,
  sentence,
  said,
  picture,
  most = MOST,
  legend,
  children,
  columns,
  rows,
  source,
}: CurveFigureProps<Row>) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const { ref, width } = useWidth<HTMLDivElement>(640);
  const height = usePlotHeight(most, beside ? TITLE : 0);
  return (
    <figure className={styles.figure} aria-label={title} aria-describedby={`${id}-sentence ${id}-said`}>
      <figcaption>
        {beside && <h3 className={styles.figureTitle}>{title}</h3>}
        <p id={`${id}-sentence`}>{sentence}</p>
        <p id={`${id}-said`} hidden>
          {said}
        </p>
      </figcaption>
      <div ref={ref} data-picture="" className={styles.plotRoom}>
        {picture(width, height)}
      </div>
      {legend && <div className={styles.legend}>{legend}</div>}
      {children}
      <div className={styles.figureFoot}>
        <Disclosure summary={tableOf(title)} onToggle={setOpen}>
          {open && <DataTable caption={title} columns={columns} rows={rows()} />}
        </Disclosure>
        <div className={`${styles.actions} unprinted`}>
          <PrintSheet label={`Print “${title}”`} title={title}>
            {() => (
              <>
                <p>
                  {sentence} {said}
                </p>
                {picture(PRINTED.width, PRINTED.height)}
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

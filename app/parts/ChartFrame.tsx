import { useId, type ReactNode } from 'react';
import styles from './ChartFrame.module.css';
import { Disclosure } from './Disclosure';
import { DataTable, type TableColumn } from './DataTable';

interface ChartFrameProps<Row> {
  title: string;
  /** Rank of the title among the page's headings. */
  headingLevel?: 2 | 3;
  /** What the picture shows, in one sentence that stands alone. */
  sentence: ReactNode;
  /** The picture. Give an inner SVG `aria-hidden`: the sentence and the table speak for it. */
  children: ReactNode;
  /** The numbers behind the picture. */
  columns: readonly TableColumn<Row>[];
  rows: readonly Row[];
  /** Where the numbers come from. */
  source?: ReactNode;
}

/** What leads to the table behind a picture, in a name that stands alone among others: `Table of the chase`. */
export const tableOf = (title: string) => `Table of ${title.charAt(0).toLowerCase()}${title.slice(1)}`;

/** A picture with its title, what it shows in words, and the table behind it. */
export function ChartFrame<Row>(props: ChartFrameProps<Row>) {
  const { title, headingLevel = 2, sentence, children, columns, rows, source } = props;
  const Heading = `h${headingLevel}` as const;
  const id = useId();
  return (
    <figure className={styles.frame} aria-labelledby={`${id}-title`} aria-describedby={`${id}-sentence`}>
      <figcaption className={styles.caption}>
        <Heading id={`${id}-title`}>{title}</Heading>
        <p id={`${id}-sentence`}>{sentence}</p>
      </figcaption>
      <div className={styles.picture}>{children}</div>
      <div className={styles.foot}>
        <Disclosure summary={tableOf(title)}>
          <DataTable caption={title} columns={columns} rows={rows} />
        </Disclosure>
        {source && <p className={styles.source}>{source}</p>}
      </div>
    </figure>
  );
}

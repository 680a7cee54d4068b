import type { ReactNode } from 'react';
import styles from './DataTable.module.css';

export interface TableColumn<Row> {
  heading: ReactNode;
  cell: (row: Row) => ReactNode;
  /** Numbers line up on the right. */
  numeric?: boolean;
}

interface DataTableProps<Row> {
  caption: string;
  columns: readonly TableColumn<Row>[];
  rows: readonly Row[];
  /** Draws the caption; otherwise it is only said, where a title stands above. */
  captionShown?: boolean;
  /** Index of a row to bring out; say in one of its cells why. */
  marked?: number | undefined;
}

/** A table whose first column names its rows. It scrolls inside itself when the page is narrow. */
export function DataTable<Row>({ caption, columns, rows, captionShown = false, marked }: DataTableProps<Row>) {
  return (
    <div className={styles.scroll} role="region" aria-label={caption} tabIndex={0}>
      <table className={styles.table}>
        <caption className={captionShown ? undefined : 'spoken'}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column, index) => (
              <th key={index} scope="col" className={column.numeric ? styles.numeric : undefined}>
                {column.heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, rowIndex) => (
            <tr key={rowIndex} className={rowIndex === marked ? styles.marked : undefined}>
              {columns.map((column, index) => {
                const Cell = index === 0 ? 'th' : 'td';
                return (
                  <Cell
                    key={index}
                    className={column.numeric ? styles.numeric : undefined}
                    {...(index === 0 && { scope: 'row' })}
                  >
                    {column.cell(row)}
                  </Cell>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

'use client';

import type { PublishedRow, PublishedTable } from '@/lib/curves/published-no-stop';
import { whyTheyDiffer, type DifferenceStep } from '@/lib/curves/table-differences';
import { fixed } from '@/lib/quantity/number';
import { printPercent } from '@/lib/quantity/percent';
import { partsAs } from '@/lib/sayings/measures';
import { DataTable } from '../../parts/DataTable';
import styles from '../curves.module.css';

const STEP_NAMES: Record<DifferenceStep['id'], string> = {
  model: 'The model',
  descent: 'The way down counts',
  'whole-minutes': 'Whole minutes',
  remainder: 'Another model, another risk',
};

interface TablesBesideProps {
  tables: readonly PublishedTable[];
  depthM: number;
  gf: number;
}

/** Why a published table says something else, step by step, at its row nearest the cursor. */
export function TablesBeside({ tables, depthM, gf }: TablesBesideProps) {
  return (
    <div className={styles.stack}>
      <h3>Why the tables differ</h3>
      <p>
        Each row nearest the cursor, from the model’s own time on air under a high gradient factor of {printPercent(gf)}{' '}
        to the printed one. The tables are printed for air, from arriving rested; only steps that can be counted are
        counted.
      </p>
      {tables.map((table) => (
        <TableBeside key={table.id} table={table} row={nearestRow(table, depthM)} gf={gf} />
      ))}
    </div>
  );
}

function TableBeside({ table, row, gf }: { table: PublishedTable; row: PublishedRow; gf: number }) {
  return (
    <div className={styles.stack}>
      <DataTable
        caption={`${table.name} at ${row.printed}: ${row.minutes} min (${row.obtained})`}
        captionShown
        columns={[
          { heading: 'Step', cell: (step: DifferenceStep) => STEP_NAMES[step.id] },
          {
            heading: 'Minutes',
            numeric: true,
            cell: ({ minutes }) => partsAs('noStopExactMin', minutes, 'metric')[0],
          },
          {
            heading: 'Change',
            numeric: true,
            cell: ({ changeMin }) => (changeMin === 0 ? '–' : `${changeMin > 0 ? '+' : ''}${fixed(changeMin, 1)}`),
          },
          { heading: 'Why', cell: ({ why }) => why.join(' ') },
        ]}
        rows={whyTheyDiffer(table, row, gf)}
      />
      <p className={styles.source}>
        {table.source}. {table.note}
      </p>
    </div>
  );
}

function nearestRow({ rows }: PublishedTable, depthM: number): PublishedRow {
  return rows.reduce((nearest, row) =>
    Math.abs(row.depthM - depthM) < Math.abs(nearest.depthM - depthM) ? row : nearest,
  );
}

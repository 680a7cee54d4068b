'use client';

import { useState } from 'react';
import { cautions } from '@/content/cautions';
import { resultRows, type ResultRow } from '@/lib/class/results';
import { resultsCsv } from '@/lib/class/results-csv';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { rounded } from '../../parts/answers/rounded';
import { Button } from '../../parts/Button';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import { PrintSheet } from '../../parts/PrintSheet';
import { saveFile } from '../../parts/save-file';
import { forgetClass, useClass } from './teacher-line';
import styles from './teach.module.css';

/** What the class has answered, question by question: to look at, print, save, and forget. */
export function ClassResults() {
  const state = useClass();
  const units = usePreferences((one) => one.units);
  const [sure, setSure] = useState(false);
  if (state.asked.length === 0) return null;
  const rows = resultRows(state, (value, { ask }) => {
    if (ask.by !== 'number') return String(value);
    const { unit, size } = answerUnit(ask.dimension, units);
    return `${rounded(value / size)} ${unit}`.trim();
  });
  const date = new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
  return (
    <Disclosure summary={`Results so far (${state.asked.length})`}>
      <div className={styles.results}>
        <ResultsTable rows={rows} />
        <div className={styles.row}>
          <PrintSheet label="Print" title="What the class said">
            {() => (
              <>
                <p>{date}</p>
                <ResultsTable rows={rows} />
              </>
            )}
          </PrintSheet>
          <Button
            icon="save"
            onClick={() => saveFile('halftime-class-results.csv', resultsCsv(rows, cautions.general), 'text/csv')}
          >
            Save as CSV
          </Button>
          {sure ? (
            <>
              <Button
                kind="primary"
                onClick={() => {
                  setSure(false);
                  void forgetClass();
                }}
              >
                Forget every answer and nickname
              </Button>
              <Button kind="quiet" onClick={() => setSure(false)}>
                Keep them
              </Button>
            </>
          ) : (
            <Button onClick={() => setSure(true)}>Forget this class</Button>
          )}
        </div>
        <p className={styles.soft}>
          No name is in it. It is kept in this browser alone, until you forget it or open another class.
        </p>
      </div>
    </Disclosure>
  );
}

function ResultsTable({ rows }: { rows: readonly ResultRow[] }) {
  return (
    <DataTable
      caption="What the class said, by question and round"
      rows={rows}
      columns={[
        { heading: 'Question', cell: ({ question }) => question },
        { heading: 'Round', numeric: true, cell: ({ round }) => round },
        { heading: 'Answered', numeric: true, cell: ({ answered }) => answered },
        { heading: 'Right', numeric: true, cell: ({ right }) => right ?? '–' },
        { heading: 'Answers', cell: ({ answers }) => answers },
      ]}
    />
  );
}

'use client';

import { useDeferredValue, useState } from 'react';
import { cautions } from '@/content/cautions';
import type { Asked } from '@/lib/class/class-state';
import { resultRows, type ResultRow } from '@/lib/class/results';
import { resultsCsv } from '@/lib/class/results-csv';
import { answersOf, sketchesOf, spreadOf } from '@/lib/class/spread';
import { inUnits } from '@/lib/class/words';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { rounded } from '../../parts/answers/rounded';
import { Button } from '../../parts/Button';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import { PrintSheet } from '../../parts/PrintSheet';
import { Prose } from '../../parts/prose/Prose';
import { SpreadPicture } from '../../parts/spread/SpreadPicture';
import { saveFile } from '../../parts/save-file';
import { useAskWords } from '../lesson-words';
import { fetchedLater } from '../../parts/fetched-later';
import { Reasons } from './Reasons';
import { forgetClass, useClass } from './teacher-line';
import styles from './teach.module.css';

const HomeQuestions = fetchedLater(async () => (await import('./HomeQuestions')).HomeQuestions);

/** What the class has answered, question by question: to look at, print, save, and forget. */
export function ClassResults() {
  // What is asked of the class comes before the sheet that counts it.
  const state = useDeferredValue(useClass());
  const units = usePreferences((one) => one.units);
  const [open, setOpen] = useState(false);
  const [sure, setSure] = useState(false);
  const [home, setHome] = useState(false);
  if (state.asked.length === 0) return null;
  const rows = resultRows(state, (value, { ask }) => {
    if (ask.by !== 'number') return String(value);
    const { unit, size } = answerUnit(ask.dimension, units);
    return `${rounded(value / size)} ${unit}`.trim();
  });
  return (
    <Disclosure summary={`Results so far (${state.asked.length})`} onToggle={setOpen}>
      <div className={styles.results}>
        <ResultsTable rows={rows} />
        {open && <Questions asked={state.asked} />}
        <div className={styles.row}>
          <PrintSheet label="Print" title="What the class said">
            {() => (
              <>
                <p>{new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })}</p>
                <ResultsTable rows={rows} />
                <Questions asked={state.asked} />
              </>
            )}
          </PrintSheet>
          <Button
            icon="save"
            onClick={() => saveFile('halftime-class-results.csv', resultsCsv(rows, cautions.general), 'text/csv')}
          >
            Save as CSV
          </Button>
          <Button icon="link" onClick={() => setHome(true)}>
            For those who can’t be there
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
        {home && <HomeQuestions asked={state.asked} onClose={() => setHome(false)} />}
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

/** Question by question: how the answers lie, round beside round under the engine's, and why the commonest wrong ones are wrong. */
function Questions({ asked }: { asked: readonly Asked[] }) {
  return (
    <ol className={styles.questions}>
      {asked.map((one) => (
        <li key={one.ask.id}>
          <OneQuestion asked={one} />
        </li>
      ))}
    </ol>
  );
}

function OneQuestion({ asked }: { asked: Asked }) {
  const { ask, truth, phase, rounds } = asked;
  const words = useAskWords(ask.source);
  const units = usePreferences((one) => one.units);
  const { current } = useClass();
  // What is still before the class is not told by its results.
  if (ask.id === current && phase !== 'truth') return <p>{ask.title}: still before the class.</p>;
  return (
    <section aria-label={ask.title} className={styles.question}>
      <h3>{ask.title}</h3>
      {ask.text !== undefined && <p className={styles.plain}>{inUnits(ask.text, units)}</p>}
      {words && <Prose html={words.html} />}
      <SpreadPicture
        ask={ask}
        spreads={rounds.map((_, i) => spreadOf(ask, answersOf(asked, i)))}
        truth={truth}
        optionsHtml={words?.optionsHtml}
        sketches={ask.by === 'draw' ? rounds.map((_, i) => sketchesOf(answersOf(asked, i))) : undefined}
      />
      <Reasons asked={asked} />
    </section>
  );
}

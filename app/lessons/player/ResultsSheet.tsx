'use client';

import { useState } from 'react';
import { cautions } from '@/content/cautions';
import { withoutLesson } from '@/lib/lesson/progress';
import { Button } from '../../parts/Button';
import { DataTable } from '../../parts/DataTable';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { PrintSheet } from '../../parts/PrintSheet';
import { useStatus } from '../../parts/status';
import { fileWords, saveFile } from '../../parts/save-file';
import type { PreparedLesson } from '../prepared';
import { HandIn } from './HandIn';
import { resultRows, resultsText, type ResultRow } from './results';
import { useLessonProgress, useProgress } from './progress-store';
import { PAD, sketchAxes, sketchPath } from '../../parts/answers/sketch-axes';
import styles from './player.module.css';
import sketches from '../../parts/answers/sketch.module.css';

/** What was foretold and what was so, to look at, print or save. */
export function ResultsSheet({ lesson, handsIn }: { lesson: PreparedLesson; handsIn: boolean }) {
  const units = usePreferences((state) => state.units);
  const progress = useLessonProgress(lesson.slug);
  const all = useProgress((state) => state.progress);
  const update = useProgress((state) => state.update);
  const say = useStatus((state) => state.say);
  const [name, setName] = useState('');
  const [handing, setHanding] = useState(false);
  const rows = resultRows(lesson, progress, units);
  const asked = rows.filter(({ right }) => right !== undefined);
  const date = () => new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
  const open = rows.filter(({ answer }) => answer === '').length;
  const summary = `${asked.filter(({ right }) => right).length} of ${asked.length} first answers as you said; ${open} of ${rows.length} not answered.`;

  return (
    <div className={styles.results}>
      <p>{summary} A wrong guess that surprised you is worth more here than a right one.</p>
      <ResultsTable rows={rows} />
      <div className={`${styles.resultsTools} unprinted`}>
        <Field
          label="Your name, for paper"
          hint="It is put on what you print or save and kept nowhere."
          value={name}
          onChange={(event) => setName(event.target.value)}
          maxLength={80}
        />
        <PrintSheet label="Print" title={`${lesson.title}: results`}>
          {() => (
            <>
              <p>
                {name === '' ? 'Name:' : name} · {date()}
              </p>
              <p>{summary}</p>
              <ResultsTable rows={rows} />
            </>
          )}
        </PrintSheet>
        {handsIn && (
          <Button kind="primary" icon="link" onClick={() => setHanding(true)}>
            Hand in
          </Button>
        )}
        <Button
          icon="save"
          onClick={() =>
            saveFile(
              `halftime-${fileWords(lesson.title)}-results.txt`,
              resultsText(lesson, rows, name.trim(), date(), cautions.general),
            )
          }
        >
          Save as text
        </Button>
        <Button
          kind="quiet"
          onClick={() => {
            update((before) => withoutLesson(before, lesson.slug));
            say('This lesson begins anew: your answers to it are gone.', {
              label: 'Bring them back',
              run: () => update(() => all),
            });
          }}
        >
          Start this lesson over
        </Button>
      </div>
      {handing && <HandIn slug={lesson.slug} title={lesson.title} onClose={() => setHanding(false)} />}
    </div>
  );
}

/** A curve that was drawn, thin over the true one. Its values stand beside it in words. */
function SmallSketch({ drawn, draw }: NonNullable<ResultRow['sketch']>) {
  const axes = sketchAxes(draw, 'metric');
  return (
    <svg viewBox={`0 0 ${PAD.width} ${PAD.height}`} className={sketches.small} aria-hidden="true">
      <path d={sketchPath(draw.truth, axes)} className={sketches.truth} />
      <path d={sketchPath(drawn, axes)} className={sketches.drawn} />
    </svg>
  );
}

function ResultsTable({ rows }: { rows: readonly ResultRow[] }) {
  return (
    <DataTable
      caption="Your answers and what was so"
      rows={rows}
      columns={[
        { heading: 'Step', cell: ({ step }) => step },
        {
          heading: 'You said first',
          // In one cell, so that what was so stands beside it on a phone.
          cell: ({ answer, confidence, sketch, reason, later }) => (
            <>
              {sketch && <SmallSketch {...sketch} />}
              {confidence === '' ? answer : `${answer} (${confidence})`}
              {reason !== '' && `, because “${reason}”`}
              {later !== '' && <p>Later: {later}</p>}
            </>
          ),
        },
        {
          heading: 'So it is',
          cell: ({ outcome, right }) => (right === undefined ? outcome : `${right ? '✓' : '≠'} ${outcome}`),
        },
      ]}
    />
  );
}

'use client';

import type { Sketch } from '@/lib/lesson/questions/sketch';
import { sketchAt } from '@/lib/lesson/questions/sketch';
import { entryUnit } from '@/lib/lesson/entry';
import { printClock } from '@/lib/quantity/duration';
import { DataTable } from '../../parts/DataTable';
import { Disclosure } from '../../parts/Disclosure';
import { usePreferences } from '../../parts/preferences';
import type { PredictStep, PreparedLesson } from '../prepared';
import { ProseLine } from '../Prose';
import { PAD, sketchAxes, sketchPath } from './sketch-axes';
import { rounded } from './rounded';
import { SketchGround } from './SketchGround';
import { useEngine } from './use-engine';
import playerStyles from './player.module.css';
import styles from './sketch.module.css';

const TABLE_ROWS = 11;

/** The curve drawn, with the true one over it, and how they differ in words. */
export function SketchOverlay({ lesson, step, sketch }: { lesson: PreparedLesson; step: PredictStep; sketch: Sketch }) {
  const engine = useEngine();
  const units = usePreferences((state) => state.units);
  const asked = step.draw!;
  const axes = sketchAxes(asked, units);
  const verdict = engine?.drawVerdict(lesson, step, sketch, units);
  const { unit, size } = entryUnit(asked.dimension, units);
  const rows = Array.from(
    { length: TABLE_ROWS },
    (_, i) => asked.fromS + ((asked.toS - asked.fromS) * i) / (TABLE_ROWS - 1),
  );
  return (
    <figure className={styles.overlay}>
      <svg viewBox={`0 0 ${PAD.width} ${PAD.height}`} className={styles.still} aria-hidden="true">
        <SketchGround axes={axes} />
        <path d={sketchPath(asked.truth, axes)} className={styles.truth} />
        <path d={sketchPath(sketch, axes)} className={styles.drawn} />
      </svg>
      <figcaption>
        <p className={styles.key} aria-hidden="true">
          <span>
            <svg width="34" height="10">
              <path d="M1,5H33" className={styles.truth} />
            </svg>
            what the model says
          </span>
          <span>
            <svg width="34" height="10">
              <path d="M1,5H33" className={styles.drawn} />
            </svg>
            what you drew
          </span>
        </p>
        {verdict && <p>{verdict.text}</p>}
        {verdict?.because && (
          <p className={playerStyles.because}>
            <ProseLine html={verdict.because} />
          </p>
        )}
      </figcaption>
      <Disclosure summary="Read it as a table">
        <DataTable
          caption={`${asked.noun}, ${unit}`}
          rows={rows}
          columns={[
            { heading: 'Time', cell: (timeS) => printClock(timeS) },
            { heading: `You drew, ${unit}`, numeric: true, cell: (timeS) => rounded(sketchAt(sketch, timeS) / size) },
            {
              heading: `The model, ${unit}`,
              numeric: true,
              cell: (timeS) => rounded(sketchAt(asked.truth, timeS) / size),
            },
          ]}
        />
      </Disclosure>
    </figure>
  );
}

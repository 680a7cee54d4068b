'use client';

import type { Sketch } from '@/lib/lesson/questions/sketch';
import { sketchAt } from '@/lib/lesson/questions/sketch';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { sayMoment } from '@/lib/lesson/questions/compare-sketch';
import { DataTable } from '../../../parts/DataTable';
import { Disclosure } from '../../../parts/Disclosure';
import { usePreferences } from '../../../parts/preferences';
import type { PredictStep, PreparedLesson } from '../../prepared';
import { ProseLine } from '../../../parts/prose/Prose';
import { sketchAxes, sketchPath } from '../../../parts/answers/sketch-axes';
import { rounded } from '../../../parts/answers/rounded';
import { SketchPaper } from '../../../parts/answers/SketchPaper';
import { useEngine } from '../use-engine';
import playerStyles from '../steps/outcome.module.css';
import styles from '../../../parts/answers/sketch.module.css';

const TABLE_ROWS = 11;

/** Moments evenly along the axis. */
function evenly({ fromS, toS }: { fromS: number; toS: number }): number[] {
  return Array.from({ length: TABLE_ROWS }, (_, i) => Math.round(fromS + ((toS - fromS) * i) / (TABLE_ROWS - 1)));
}

/** The curve drawn, with the true one over it, and how they differ in words. */
export function SketchOverlay({ lesson, step, sketch }: { lesson: PreparedLesson; step: PredictStep; sketch: Sketch }) {
  const engine = useEngine();
  const units = usePreferences((state) => state.units);
  const asked = step.draw!;
  const axes = sketchAxes(asked, units);
  const verdict = sketch.length === 0 ? undefined : engine?.drawVerdict(lesson, step, sketch, units);
  const { unit, size } = answerUnit(asked.dimension, units);
  const rows = [...new Set([...asked.boxesS, ...evenly(asked)])].sort((one, other) => one - other);
  const trueValue = (timeS: number) => {
    const value = sketchAt(asked.truth, timeS);
    return `${value >= asked.upTo ? 'over ' : ''}${rounded(value / size)}`;
  };
  return (
    <figure className={styles.overlay}>
      <SketchPaper axes={axes} className={styles.still} aria-hidden="true">
        <path d={sketchPath(asked.truth, axes)} className={styles.truth} />
        {sketch.length > 0 && <path d={sketchPath(sketch, axes)} className={styles.drawn} />}
      </SketchPaper>
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
        {verdict && verdict.features.length > 0 && (
          <ul className={styles.features} aria-label="What matters of this curve">
            {verdict.features.map(({ name, met, because }) => (
              <li key={name} data-met={met}>
                <span aria-hidden="true">{met ? '✓' : '≠'}</span>
                <span>
                  <b>
                    <span className="spoken">{met ? 'Right: ' : 'Not so: '}</span>
                    {name}
                  </b>
                  {!met && (
                    <>
                      . <ProseLine html={because} />
                    </>
                  )}
                </span>
              </li>
            ))}
          </ul>
        )}
        {verdict?.because && (
          <p className={playerStyles.because}>
            <ProseLine html={verdict.because} />
          </p>
        )}
      </figcaption>
      <Disclosure summary="Table of what you drew and what the model says">
        <DataTable
          caption={`${asked.noun}, ${unit}`}
          rows={rows}
          columns={[
            { heading: 'Time', cell: (timeS) => sayMoment(timeS, asked) },
            {
              heading: `You drew, ${unit}`,
              numeric: true,
              cell: (timeS) => (sketch.length === 0 ? '' : rounded(sketchAt(sketch, timeS) / size)),
            },
            {
              heading: `The model, ${unit}`,
              numeric: true,
              cell: (timeS) => trueValue(timeS),
            },
          ]}
        />
      </Disclosure>
    </figure>
  );
}

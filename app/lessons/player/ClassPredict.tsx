'use client';

import { useState } from 'react';
import type { Sketch } from '@/lib/lesson/questions/sketch';
import { entryUnit } from '@/lib/lesson/entry';
import { usePreferences } from '../../parts/preferences';
import { valueHtml } from '../fillable';
import type { PredictStep, PreparedLesson } from '../prepared';
import { Prose, ProseLine } from '../Prose';
import { HandsTally } from './HandsTally';
import { NumberLine } from './NumberLine';
import { NumbersCalled } from './NumbersCalled';
import { SketchOverlay } from './SketchOverlay';
import { SketchPad } from './SketchPad';
import styles from './presenter.module.css';

interface ClassPredictProps {
  lesson: PreparedLesson;
  step: PredictStep;
  shown: boolean;
}

/** A question put to a class: hands first, the answer when it is uncovered. */
export function ClassPredict({ lesson, step, shown }: ClassPredictProps) {
  const units = usePreferences((state) => state.units);
  const [called, setCalled] = useState<readonly number[]>([]);
  const [sketch, setSketch] = useState<Sketch>();
  const { choice, number, draw } = step;
  const entry = number && entryUnit(number.answer.dimension, units);
  return (
    <>
      <Prose html={step.html} />
      {choice && (
        <HandsTally
          options={choice.map(({ html }) => html)}
          right={shown ? choice.findIndex(({ right }) => right) : undefined}
          because={shown ? choice.map(({ because }) => because) : undefined}
        />
      )}
      {number && entry && (
        <>
          <NumbersCalled unit={entry.unit} called={called} onCalled={setCalled} />
          {shown && (
            <>
              <NumberLine
                given={called}
                answer={number.answer.value / entry.size}
                within={number.within / entry.size}
                unit={entry.unit}
                printed={number.printed[units]}
              />
              <p className={styles.answer}>
                The model says <ProseLine html={valueHtml(number.printed)} />.
              </p>
            </>
          )}
        </>
      )}
      {draw && !shown && <SketchPad asked={draw} onSketch={setSketch} />}
      {draw && shown && <SketchOverlay lesson={lesson} step={step} sketch={sketch ?? []} />}
      {shown && <Prose html={step.after} />}
    </>
  );
}

'use client';

import { answerUnit } from '@/lib/lesson/typed-answer';
import { usePreferences } from '../../../parts/preferences';
import { valueHtml } from '../../fillable';
import type { PredictStep, PreparedLesson } from '../../prepared';
import { Prose, ProseLine } from '../../../parts/prose/Prose';
import { useClassAnswers } from './class-answers';
import { HandsTally } from './HandsTally';
import { NumberLine } from './NumberLine';
import { NumbersCalled } from './NumbersCalled';
import { SketchOverlay, SketchPad } from '../stage/drawn-later';
import styles from './class-lesson.module.css';

interface ClassPredictProps {
  lesson: PreparedLesson;
  step: PredictStep;
  shown: boolean;
}

/** A question put to a class: hands first, the answer when it is uncovered. */
export function ClassPredict({ lesson, step, shown }: ClassPredictProps) {
  const units = usePreferences((state) => state.units);
  const { called, sketch, change } = useClassAnswers(`${lesson.slug} ${step.id}`);
  const { choice, number, draw } = step;
  const entry = number && answerUnit(number.answer.dimension, units);
  return (
    <>
      <Prose html={step.html} />
      {choice && (
        <HandsTally
          name={`${lesson.slug} ${step.id}`}
          options={choice.map(({ html }) => html)}
          right={shown ? choice.findIndex(({ right }) => right) : undefined}
          because={shown ? choice.map(({ because }) => because) : undefined}
        />
      )}
      {number && entry && (
        <>
          <NumbersCalled unit={entry.unit} called={called} onCalled={(numbers) => change({ called: numbers })} />
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
      {draw && !shown && <SketchPad asked={draw} sketch={sketch} onSketch={(drawn) => change({ sketch: drawn })} />}
      {draw && shown && <SketchOverlay lesson={lesson} step={step} sketch={sketch} />}
      {shown && <Prose html={step.after} />}
    </>
  );
}

'use client';

import { useEffect, useRef } from 'react';
import type { Prediction } from '@/lib/lesson/progress';
import { answerUnit } from '@/lib/lesson/typed-answer';
import { usePreferences } from '../../../parts/preferences';
import type { Html, PredictStep, PreparedLesson } from '../../prepared';
import { valueHtml } from '../../fillable';
import { Prose, ProseLine } from '../../../parts/prose/Prose';
import { SketchOverlay } from '../stage/drawn-later';
import { NumberLine } from '../class/NumberLine';
import { rounded } from '../../../parts/answers/rounded';
import { useEngine } from '../use-engine';
import styles from './outcome.module.css';

interface OutcomeProps {
  lesson: PreparedLesson;
  step: PredictStep;
  /** What was answered, the first answer first; none where the answer was looked at. */
  given: readonly Prediction[];
  /** Whether it has just been asked for, and not been there when the step was opened. */
  fresh: boolean;
}

/** The latest prediction laid over what the model says, with the reason that fits it, and what was said before. */
export function Outcome({ lesson, step, given, fresh }: OutcomeProps) {
  const head = useRef<HTMLParagraphElement>(null);
  const prediction = given.at(-1);
  const count = given.length;
  // A verdict that has just come is brought into sight, with its reasons under it, and read out: it has the focus.
  useEffect(() => {
    if (!fresh) return;
    head.current?.focus({ preventScroll: true });
    head.current?.parentElement?.scrollIntoView?.({ block: 'start' });
  }, [fresh, count]);
  return (
    <div className={styles.outcome}>
      <p ref={head} className={styles.verdict} data-right={prediction?.right ?? false} tabIndex={-1}>
        <span aria-hidden="true">{prediction ? (prediction.right ? '✓' : '≠') : '·'}</span>{' '}
        {prediction
          ? verdict(step, prediction.right)
          : `You looked without answering. This is ${step.byModel ? 'what the model says' : 'the answer'}.`}
      </p>
      {step.choice && (
        <ChoiceOutcome step={step} chosen={prediction?.answer.by === 'choice' ? prediction.answer.option : undefined} />
      )}
      {step.number && (
        <NumberOutcome
          lesson={lesson}
          step={step}
          given={prediction?.answer.by === 'number' ? prediction.answer.value : undefined}
          right={prediction?.right ?? true}
        />
      )}
      {step.draw && (
        <SketchOverlay
          lesson={lesson}
          step={step}
          sketch={prediction?.answer.by === 'draw' ? prediction.answer.sketch : []}
        />
      )}
      {prediction && (
        <p className={styles.said}>
          You said: {prediction.confidence}
          {prediction.reason === '' ? '.' : `, because “${prediction.reason}”`}
        </p>
      )}
      {given.length > 1 && (
        <p className={styles.said}>
          Your first answer was {given[0]!.right ? 'right' : 'another, and it is kept'}; this is answer {given.length}.
        </p>
      )}
      <Prose html={step.after} />
    </div>
  );
}

function verdict({ draw, byModel }: PredictStep, right: boolean): string {
  if (!byModel) return right ? 'That is right.' : 'That is not so.';
  if (draw) return right ? 'Your curve is close to what the model says.' : 'The model says something else.';
  return right ? 'That is what the model says.' : 'The model says something else.';
}

function ChoiceOutcome({ step: { choice = [] }, chosen }: { step: PredictStep; chosen: number | undefined }) {
  return (
    <ul className={styles.judged}>
      {choice.map(({ html, right, because }, index) => (
        <li key={index} data-right={right} data-chosen={index === chosen}>
          <p>
            <span aria-hidden="true">{right ? '✓' : index === chosen ? '≠' : '·'}</span> <ProseLine html={html} />
            {index === chosen && <b> Your answer.</b>}
            {right && <span className="spoken"> This is right.</span>}
          </p>
          {(index === chosen || right) && (
            <p className={styles.because}>
              <ProseLine html={because} />
            </p>
          )}
        </li>
      ))}
    </ul>
  );
}

function NumberOutcome({
  lesson,
  step,
  given,
  right,
}: {
  lesson: PreparedLesson;
  step: PredictStep;
  given: number | undefined;
  right: boolean;
}) {
  const engine = useEngine();
  const units = usePreferences((state) => state.units);
  const { answer, within, printed } = step.number!;
  const { unit, size } = answerUnit(answer.dimension, units);
  const reply: Html | undefined =
    given !== undefined && !right && engine ? engine.numberReply(lesson, step, given) : undefined;
  return (
    <>
      <NumberLine
        given={given === undefined ? [] : [given / size]}
        answer={answer.value / size}
        within={within / size}
        unit={unit}
        printed={printed[units]}
      />
      <p>
        {given !== undefined && `You said ${rounded(given / size)} ${unit}. `}The model says{' '}
        <ProseLine html={valueHtml(printed)} />.
      </p>
      {reply && (
        <p className={styles.because}>
          <ProseLine html={reply} />
        </p>
      )}
    </>
  );
}

'use client';

import type { Prediction } from '@/lib/lesson/progress';
import { entryUnit } from '@/lib/lesson/entry';
import { usePreferences } from '../../parts/preferences';
import type { Html, PredictStep, PreparedLesson } from '../prepared';
import { valueHtml } from '../fillable';
import { Prose, ProseLine } from '../Prose';
import { NumberLine } from './NumberLine';
import { rounded } from './rounded';
import { SketchOverlay } from './SketchOverlay';
import { useEngine } from './use-engine';
import styles from './player.module.css';

interface OutcomeProps {
  lesson: PreparedLesson;
  step: PredictStep;
  prediction: Prediction;
}

/** The prediction laid over what the model says, and the reason that fits the answer. */
export function Outcome({ lesson, step, prediction }: OutcomeProps) {
  const { answer, reason, confidence, right } = prediction;
  return (
    <div className={styles.outcome}>
      <p className={styles.verdict} data-right={right} role="status">
        <span aria-hidden="true">{right ? '✓' : '≠'}</span> {verdict(step, right)}
      </p>
      {answer.by === 'choice' && <ChoiceOutcome step={step} chosen={answer.option} />}
      {answer.by === 'number' && <NumberOutcome lesson={lesson} step={step} given={answer.value} right={right} />}
      {answer.by === 'draw' && <SketchOverlay lesson={lesson} step={step} sketch={answer.sketch} />}
      <p className={styles.said}>
        You said: {confidence}
        {reason === '' ? '.' : `, because “${reason}”`}
      </p>
      <Prose html={step.after} />
    </div>
  );
}

function verdict({ draw }: PredictStep, right: boolean): string {
  if (draw) return right ? 'Your curve is close to what the model says.' : 'The model says something else.';
  return right ? 'That is what the model says.' : 'The model says something else.';
}

function ChoiceOutcome({ step: { choice = [] }, chosen }: { step: PredictStep; chosen: number }) {
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
  given: number;
  right: boolean;
}) {
  const engine = useEngine();
  const units = usePreferences((state) => state.units);
  const { answer, within, printed } = step.number!;
  const { unit, size } = entryUnit(answer.dimension, units);
  const reply: Html | undefined = !right && engine ? engine.numberReply(lesson, step, given) : undefined;
  return (
    <>
      <NumberLine
        given={[given / size]}
        answer={answer.value / size}
        within={within / size}
        unit={unit}
        printed={printed[units]}
      />
      <p>
        You said {rounded(given / size)} {unit}. The model says <ProseLine html={valueHtml(printed)} />.
      </p>
      {reply && (
        <p className={styles.because}>
          <ProseLine html={reply} />
        </p>
      )}
    </>
  );
}

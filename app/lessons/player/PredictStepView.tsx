'use client';

import { useId, useState } from 'react';
import {
  CONFIDENCES,
  withDone,
  withoutPrediction,
  withPrediction,
  type Answer,
  type Confidence,
} from '@/lib/lesson/progress';
import { isClose } from '@/lib/lesson/questions/sketch';
import { Button } from '../../parts/Button';
import { Segmented } from '../../parts/Segmented';
import type { PredictStep, PreparedLesson } from '../prepared';
import { Prose } from '../Prose';
import { ChoiceAnswer } from './ChoiceAnswer';
import { NumberAnswerBox } from './NumberAnswerBox';
import { Outcome } from './Outcome';
import { useProgress, useLessonProgress } from './progress-store';
import { SketchPad } from './SketchPad';
import styles from './player.module.css';

/** A question to be answered before anything is seen: with a reason, and how sure one is. */
export function PredictStepView({ lesson, step }: { lesson: PreparedLesson; step: PredictStep }) {
  const made = useLessonProgress(lesson.slug).predictions[step.id];
  const update = useProgress((state) => state.update);
  return (
    <>
      <Prose html={step.html} />
      {made ? (
        <>
          <Outcome lesson={lesson} step={step} prediction={made} />
          <div className="unprinted">
            <Button onClick={() => update((before) => withoutPrediction(before, lesson.slug, step.id))}>
              Answer it again
            </Button>
          </div>
        </>
      ) : (
        <Asking
          step={step}
          onPredict={(answer, reason, confidence) =>
            update((before) =>
              withDone(
                withPrediction(before, lesson.slug, step.id, {
                  answer,
                  reason,
                  confidence,
                  right: isRight(step, answer),
                }),
                lesson.slug,
                step.id,
              ),
            )
          }
        />
      )}
    </>
  );
}

function isRight({ choice, number, draw }: PredictStep, answer: Answer): boolean {
  if (answer.by === 'choice') return choice?.[answer.option]?.right ?? false;
  if (answer.by === 'number')
    return number !== undefined && Math.abs(answer.value - number.answer.value) <= number.within + 1e-9;
  return draw !== undefined && isClose(answer.sketch, draw);
}

function Asking({
  step,
  onPredict,
}: {
  step: PredictStep;
  onPredict: (answer: Answer, reason: string, confidence: Confidence) => void;
}) {
  const id = useId();
  const [answer, setAnswer] = useState<Answer>();
  const [reason, setReason] = useState('');
  const [confidence, setConfidence] = useState<Confidence>();
  const [told, setTold] = useState<string>();
  const missing = answer
    ? confidence === undefined
      ? 'Say how sure you are first.'
      : confidence !== 'a guess' && reason.trim() === ''
        ? 'Say in a few words why, or call it a guess.'
        : undefined
    : step.draw
      ? 'Draw the whole curve first, from edge to edge.'
      : 'Answer the question first.';

  return (
    <form
      className={styles.asking}
      onSubmit={(event) => {
        event.preventDefault();
        if (missing === undefined && answer && confidence) onPredict(answer, reason.trim(), confidence);
        else setTold(missing);
      }}
    >
      {step.choice && (
        <ChoiceAnswer
          legend="Your answer"
          options={step.choice.map(({ html }) => html)}
          chosen={answer?.by === 'choice' ? answer.option : undefined}
          onChoose={(option) => setAnswer({ by: 'choice', option })}
        />
      )}
      {step.number && (
        <NumberAnswerBox
          dimension={step.number.answer.dimension}
          onNumber={(value) => setAnswer(value === undefined ? undefined : { by: 'number', value })}
        />
      )}
      {step.draw && <SketchPad asked={step.draw} onSketch={(sketch) => setAnswer(sketch && { by: 'draw', sketch })} />}
      <div className={styles.reason}>
        <label htmlFor={`${id}-reason`}>Why? In a few words</label>
        <textarea
          id={`${id}-reason`}
          rows={2}
          maxLength={2000}
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
      </div>
      <Segmented
        label="How sure are you?"
        segments={CONFIDENCES.map((value) => ({ value, label: value.charAt(0).toUpperCase() + value.slice(1) }))}
        value={confidence as Confidence}
        onChange={setConfidence}
      />
      <div className={styles.askingFoot}>
        <Button kind="primary" type="submit">
          Show what the model says
        </Button>
        <p role="status">{missing !== undefined && told}</p>
      </div>
    </form>
  );
}

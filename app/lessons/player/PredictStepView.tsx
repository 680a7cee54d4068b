'use client';

import { useId, useState } from 'react';
import {
  askedAgain,
  CONFIDENCES,
  NOT_PREDICTED,
  withDraft,
  withLooked,
  withPrediction,
  withSeen,
  type Answer,
  type Confidence,
  type Draft,
} from '@/lib/lesson/progress';
import { isWhole } from '@/lib/lesson/questions/draw-sketch';
import { Button } from '../../parts/Button';
import { Segmented } from '../../parts/Segmented';
import { usePreferences } from '../../parts/preferences';
import type { PredictStep, PreparedLesson } from '../prepared';
import { ChoiceAnswer } from '../../parts/answers/ChoiceAnswer';
import { NumberAnswerBox } from '../../parts/answers/NumberAnswerBox';
import { Outcome } from './Outcome';
import { useProgress, useLessonProgress } from './progress-store';
import { SketchPad } from '../../parts/answers/SketchPad';
import { StepText } from './StepText';
import { TryOnDesk } from './TryOnDesk';
import { useEngine, type Engine } from './use-engine';
import styles from './player.module.css';

interface PredictProps {
  lesson: PreparedLesson;
  step: PredictStep;
}

/** A question to be answered before anything is seen: with a reason, and how sure one is. */
export function PredictStepView({ lesson, step }: PredictProps) {
  const { given, looked, again } = useLessonProgress(lesson.slug).predictions[step.id] ?? NOT_PREDICTED;
  const update = useProgress((state) => state.update);
  const [asked, ask] = useState(false);
  const asking = again || (given.length === 0 && !looked);
  return (
    <>
      <StepText step={step} />
      {asking ? (
        <Asking lesson={lesson} step={step} onDone={() => ask(true)} />
      ) : (
        <>
          <Outcome lesson={lesson} step={step} given={given} fresh={asked} />
          <div className={`${styles.askingFoot} unprinted`}>
            <TryOnDesk lesson={lesson} step={step} script={step.script} />
            <Button onClick={() => update((before) => askedAgain(before, lesson.slug, step.id))}>
              {given.length === 0 ? 'Answer it all the same' : 'Answer it again'}
            </Button>
          </div>
        </>
      )}
    </>
  );
}

const NO_DRAFT: Draft = {};

function Asking({ lesson, step, onDone }: PredictProps & { onDone: () => void }) {
  const id = useId();
  const engine = useEngine();
  const units = usePreferences((state) => state.units);
  const update = useProgress((state) => state.update);
  const draft = useLessonProgress(lesson.slug).drafts[step.id] ?? NO_DRAFT;
  const [told, setTold] = useState<string>();
  const { answer, reason = '', confidence } = draft;
  const keep = (change: Draft) => update((before) => withDraft(before, lesson.slug, step.id, change));
  const missing = missingOf(step, draft);

  const submit = () => {
    if (missing !== undefined || !answer || !confidence) {
      setTold(missing);
      return;
    }
    if (step.draw && !engine) {
      setTold('The model is still being fetched. Press again in a moment.');
      return;
    }
    onDone();
    const right = isRight(lesson, step, answer, engine, units);
    update((before) =>
      withSeen(
        withPrediction(before, lesson.slug, step.id, { answer, reason: reason.trim(), confidence, right }),
        lesson.slug,
        step.id,
      ),
    );
  };

  return (
    <form
      className={styles.asking}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      {step.choice && (
        <ChoiceAnswer
          legend="Your answer"
          options={step.choice.map(({ html }) => html)}
          chosen={answer?.by === 'choice' ? answer.option : undefined}
          onChoose={(option) => keep({ answer: { by: 'choice', option } })}
        />
      )}
      {step.number && (
        <NumberAnswerBox
          dimension={step.number.answer.dimension}
          begun={draft.text}
          onNumber={(value, text) => keep({ text, answer: value === undefined ? undefined : { by: 'number', value } })}
        />
      )}
      {step.draw && (
        <SketchPad
          asked={step.draw}
          sketch={answer?.by === 'draw' ? answer.sketch : []}
          onSketch={(sketch) => keep({ answer: { by: 'draw', sketch } })}
        />
      )}
      <div className={styles.reason}>
        <label htmlFor={`${id}-reason`}>Why? In a few words</label>
        <textarea
          id={`${id}-reason`}
          rows={2}
          maxLength={2000}
          value={reason}
          onChange={(event) => keep({ reason: event.target.value })}
        />
      </div>
      <Segmented
        label="How sure are you?"
        segments={CONFIDENCES.map((value) => ({ value, label: value.charAt(0).toUpperCase() + value.slice(1) }))}
        value={confidence as Confidence}
        onChange={(value) => keep({ confidence: value })}
      />
      <div className={styles.askingFoot}>
        <Button kind="primary" type="submit">
          Show what the model says
        </Button>
        <Button
          kind="quiet"
          onClick={() => {
            onDone();
            update((before) => withSeen(withLooked(before, lesson.slug, step.id), lesson.slug, step.id));
          }}
        >
          Look without answering
        </Button>
        <p role="status">{told === missing || missing === undefined ? told : missing && told && missing}</p>
      </div>
    </form>
  );
}

function missingOf({ draw }: PredictStep, { answer, confidence, reason = '' }: Draft): string | undefined {
  if (draw && !(answer?.by === 'draw' && isWhole(answer.sketch, draw)))
    return 'Draw the whole curve first, from edge to edge.';
  if (!answer) return 'Answer the question first.';
  if (confidence === undefined) return 'Say how sure you are first.';
  return confidence !== 'a guess' && reason.trim() === '' ? 'Say in a few words why, or call it a guess.' : undefined;
}

function isRight(
  lesson: PreparedLesson,
  step: PredictStep,
  answer: Answer,
  engine: Engine | undefined,
  units: 'metric' | 'imperial',
): boolean {
  const { choice, number } = step;
  if (answer.by === 'choice') return choice?.[answer.option]?.right ?? false;
  if (answer.by === 'number')
    return number !== undefined && Math.abs(answer.value - number.answer.value) <= number.within + 1e-9;
  return engine?.drawVerdict(lesson, step, answer.sketch, units).right ?? false;
}

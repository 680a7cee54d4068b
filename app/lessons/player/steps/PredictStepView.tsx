'use client';

import { useEffect, useId, useRef, useState } from 'react';
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
import { Button } from '../../../parts/Button';
import { toFirstFault } from '../../../parts/first-fault';
import { usePressedFirst } from '../../../parts/use-pressed-first';
import { Segmented } from '../../../parts/Segmented';
import { usePreferences } from '../../../parts/preferences';
import type { PredictStep, PreparedLesson } from '../../prepared';
import { ChoiceAnswer } from '../../../parts/answers/ChoiceAnswer';
import { NumberAnswerBox } from '../../../parts/answers/NumberAnswerBox';
import { Outcome } from './Outcome';
import { useProgress, useLessonProgress } from '../progress-store';
import { SketchPad } from '../stage/drawn-later';
import { StepText } from './StepText';
import { TryOnDesk } from '../TryOnDesk';
import { useEngine, type Engine } from '../use-engine';
import styles from './step.module.css';
import { isWithin } from '@/lib/lesson/questions/within';
import { capital } from '@/lib/quantity/capital';

interface PredictProps {
  lesson: PreparedLesson;
  step: PredictStep;
}

/** A question to be answered before anything is seen: with a reason, and how sure one is. */
export function PredictStepView({ lesson, step }: PredictProps) {
  const { given, looked, again } = useLessonProgress(lesson.slug).predictions[step.id] ?? NOT_PREDICTED;
  const update = useProgress((state) => state.update);
  const [asked, ask] = useState(false);
  const [reopened, reopen] = useState(false);
  const asking = again || (given.length === 0 && !looked);
  return (
    <>
      <div className={styles.words}>
        <StepText step={step} />
      </div>
      {asking ? (
        <Asking lesson={lesson} step={step} reopened={reopened} onDone={() => ask(true)} />
      ) : (
        <div className={styles.answered}>
          <Outcome lesson={lesson} step={step} given={given} fresh={asked} />
          <div className={`${styles.askingFoot} unprinted`}>
            <TryOnDesk lesson={lesson} step={step} script={step.script} />
            <Button
              onClick={() => {
                reopen(true);
                update((before) => askedAgain(before, lesson.slug, step.id));
              }}
            >
              {given.length === 0 ? 'Answer it all the same' : 'Answer it again'}
            </Button>
          </div>
        </div>
      )}
    </>
  );
}

const NO_DRAFT: Draft = {};

function Asking({ lesson, step, reopened, onDone }: PredictProps & { reopened: boolean; onDone: () => void }) {
  const id = useId();
  const engine = useEngine();
  const units = usePreferences((state) => state.units);
  const update = useProgress((state) => state.update);
  const draft = useLessonProgress(lesson.slug).drafts[step.id] ?? NO_DRAFT;
  const [told, setTold] = useState<Missing>();
  const [presses, setPresses] = useState(0);
  const form = useRef<HTMLFormElement>(null);
  // Whoever answers again goes on at the answer.
  useEffect(() => {
    if (reopened) goTo(form.current, 'answer');
  }, [reopened]);
  const { answer, reason = '', confidence } = draft;
  const keep = (change: Draft) => update((before) => withDraft(before, lesson.slug, step.id, change));
  const missing = missingOf(step, draft);

  // What a press found missing is told until it is there; what is missing besides, at the next press.
  const stillTold = told?.part === missing?.part ? told : undefined;
  const faulty = stillTold?.part;

  const handIn = usePressedFirst(() => {
    if (!answer || !confidence) return;
    onDone();
    const right = isRight(lesson, step, answer, engine, units);
    update((before) =>
      withSeen(
        withPrediction(before, lesson.slug, step.id, { answer, reason: reason.trim(), confidence, right }),
        lesson.slug,
        step.id,
      ),
    );
  });

  const submit = () => {
    // A box that can't be read says itself what is wrong with it.
    const unread = partOf(form.current, 'answer');
    if (unread && toFirstFault(unread)) {
      setTold(undefined);
      return;
    }
    if (missing !== undefined) {
      setTold(missing);
      // Said again at every press, and the hand goes to what is missing.
      setPresses((before) => before + 1);
      if (missing?.part) goTo(form.current, missing.part);
      return;
    }
    if (step.draw && !engine) {
      setTold({ part: undefined, words: 'The model is still being fetched. Press again in a moment.' });
      return;
    }
    handIn.onClick();
  };

  return (
    <form
      ref={form}
      className={styles.asking}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <div data-asked="answer" data-faulty={faulty === 'answer' || undefined}>
        {step.choice && (
          <ChoiceAnswer
            options={step.choice.map(({ html }) => html)}
            chosen={answer?.by === 'choice' ? answer.option : undefined}
            onChoose={(option) => keep({ answer: { by: 'choice', option } })}
          />
        )}
        {step.number && (
          <NumberAnswerBox
            dimension={step.number.answer.dimension}
            begun={draft.text}
            onNumber={(value, text) =>
              keep({ text, answer: value === undefined ? undefined : { by: 'number', value } })
            }
          />
        )}
        {step.draw && (
          <SketchPad
            asked={step.draw}
            sketch={answer?.by === 'draw' ? answer.sketch : []}
            onSketch={(sketch) => keep({ answer: { by: 'draw', sketch } })}
          />
        )}
      </div>
      <div className={styles.reason} data-asked="reason" data-faulty={faulty === 'reason' || undefined}>
        <label htmlFor={`${id}-reason`}>Why? In a few words</label>
        <textarea
          id={`${id}-reason`}
          rows={2}
          aria-invalid={faulty === 'reason' || undefined}
          maxLength={2000}
          value={reason}
          onChange={(event) => keep({ reason: event.target.value })}
        />
      </div>
      <div className={styles.sure} data-asked="confidence" data-faulty={faulty === 'confidence' || undefined}>
        <Segmented
          label="How sure are you?"
          segments={CONFIDENCES.map((value) => ({ value, label: capital(value) }))}
          value={confidence as Confidence}
          onChange={(value) => keep({ confidence: value })}
        />
      </div>
      <div className={styles.askingFoot}>
        <Button kind="primary" type="submit" aria-busy={handIn['aria-busy']}>
          {step.byModel ? 'Show what the model says' : 'Show the answer'}
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
        <p role="status">
          <span key={presses}>{stillTold?.words}</span>
        </p>
      </div>
    </form>
  );
}

const partOf = (form: HTMLFormElement | null, part: string) =>
  form?.querySelector<HTMLElement>(`[data-asked="${part}"]`);

/** The hand goes to a part of the form: of several boxes, to the first that is empty. */
function goTo(form: HTMLFormElement | null, part: string): void {
  const boxes = [...(partOf(form, part)?.querySelectorAll<HTMLInputElement>('input, textarea') ?? [])];
  const box = boxes.find(({ type, value }) => type !== 'radio' && value === '') ?? boxes[0];
  // Boxes may be folded away.
  box?.closest('details')?.setAttribute('open', '');
  box?.focus();
}

interface Missing {
  /** Undefined where it is nothing of the answer. */
  readonly part: 'answer' | 'confidence' | 'reason' | undefined;
  readonly words: string;
}

function missingOf({ draw }: PredictStep, { answer, confidence, reason = '' }: Draft): Missing | undefined {
  if (draw && !(answer?.by === 'draw' && isWhole(answer.sketch, draw)))
    return { part: 'answer', words: 'Draw the whole curve first, from edge to edge, or fill its first and last box.' };
  if (!answer) return { part: 'answer', words: 'Answer the question first.' };
  if (confidence === undefined) return { part: 'confidence', words: 'Say how sure you are first.' };
  if (confidence === 'a guess' || reason.trim() !== '') return undefined;
  return { part: 'reason', words: 'Say in a few words why, or call it a guess.' };
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
  if (answer.by === 'number') return number !== undefined && isWithin(answer.value, number.answer.value, number.within);
  return engine?.drawVerdict(lesson, step, answer.sketch, units).right ?? false;
}

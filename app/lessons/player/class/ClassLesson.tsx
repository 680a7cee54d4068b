'use client';

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { cautions } from '@/content/cautions';
import { Button } from '../../../parts/Button';
import { IconButton } from '../../../parts/IconButton';
import { useStage } from '../../../stage/use-stage';
import type { PreparedLesson, PreparedStep } from '../../prepared';
import { Prose } from '../../../parts/prose/Prose';
import { ClassCheck } from './ClassCheck';
import { ClassPredict } from './ClassPredict';
import { classKey } from './class-key';
import { fillsWindow } from '../fills-window';
import { StepNotes } from '../steps/StepNotes';
import { StepView } from '../steps/StepView';
import styles from './class-lesson.module.css';
import places from '../window.module.css';

interface ClassLessonProps {
  lesson: PreparedLesson;
  place: number;
  onTurn: (place: number) => void;
  onEnd: () => void;
}

const LARGE = 1;

/** A lesson before a class: large type, answers covered until you uncover them, hands counted. */
export function ClassLesson({ lesson, place, onTurn, onEnd }: ClassLessonProps) {
  const stage = useRef<HTMLDivElement>(null);
  const step = lesson.steps[place]!;
  const [uncovered, setUncovered] = useState<string>();
  const [notes, setNotes] = useState(false);
  useStage(stage, LARGE, onEnd);
  const covers = hasAnswer(step);
  const shown = uncovered === step.id;

  const next = useCallback(() => {
    if (covers && !shown) setUncovered(step.id);
    else if (place < lesson.steps.length - 1) onTurn(place + 1);
  }, [covers, shown, step.id, place, lesson.steps.length, onTurn]);
  const back = useCallback(() => {
    if (covers && shown) setUncovered(undefined);
    else if (place > 0) onTurn(place - 1);
  }, [covers, shown, place, onTurn]);
  const doings = useMemo(() => ({ next, back, notes: () => setNotes((on) => !on), leave: onEnd }), [next, back, onEnd]);

  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const doing = classKey(event);
      if (!doing) return;
      event.preventDefault();
      doings[doing]();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [doings]);

  return (
    <div
      ref={stage}
      tabIndex={-1}
      className={styles.presenter}
      aria-label={`${lesson.title}, before a class`}
      role="region"
    >
      <p className={styles.caution}>{cautions.general}</p>
      <div className={places.body}>
        <section
          aria-labelledby="presented"
          className={fillsWindow(step) ? places.window : styles.step}
          data-kind={step.kind}
        >
          <h2 id="presented">{step.title}</h2>
          <Presented key={step.id} lesson={lesson} step={step} shown={shown} />
        </section>
        {notes && step.notes && <StepNotes notes={step.notes} />}
        {notes && !step.notes && <p>There are no notes for this step.</p>}
      </div>
      <div className={styles.bar} role="group" aria-label="Presenting">
        <IconButton icon="stepBack" label="Back" onClick={back} disabled={place === 0 && !shown} />
        <span>
          {place + 1} of {lesson.steps.length}
        </span>
        <Button kind="primary" onClick={next} disabled={place === lesson.steps.length - 1 && (!covers || shown)}>
          {covers && !shown ? 'Uncover the answer' : 'Next'}
        </Button>
        <Button aria-pressed={notes} onClick={doings.notes}>
          Notes
        </Button>
        <span className={styles.keys}>Page keys turn, N shows notes, Escape leaves</span>
        <IconButton icon="close" label="Leave the presenter’s view" onClick={onEnd} />
      </div>
    </div>
  );
}

function hasAnswer(step: PreparedStep): boolean {
  return step.kind === 'predict' || step.kind === 'check';
}

function Presented({ lesson, step, shown }: { lesson: PreparedLesson; step: PreparedStep; shown: boolean }) {
  if (step.kind === 'predict') return <ClassPredict lesson={lesson} step={step} shown={shown} />;
  if (step.kind === 'check') return <ClassCheck lesson={lesson} step={step} shown={shown} />;
  if (step.kind === 'read' && !step.look) return <Prose html={step.html} />;
  return <StepView lesson={lesson} step={step} />;
}

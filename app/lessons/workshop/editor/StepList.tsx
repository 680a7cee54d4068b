'use client';

import { useId, useState, type DragEvent, type KeyboardEvent } from 'react';
import { placeOfStep, withEntryMoved, withStep, withStepCopied, withValue } from '@/lib/lesson/edit-lesson';
import type { LessonFault } from '@/lib/lesson/checking/fault';
import { STEP_KINDS, type StepKind } from '@/lib/lesson/step';
import { Button } from '../../../parts/Button';
import { KIND_WORDS } from '../../kind-words';
import { stepKind } from './step-kind';
import styles from '../workshop.module.css';
import { fieldOf } from '@/lib/lesson/read-progress';

/** What is being written: the lesson as a whole, its dives, or a step by its index. */
export type Place = 'lesson' | 'dives' | number;

interface StepListProps {
  text: string;
  data: unknown;
  place: Place;
  faults: readonly LessonFault[];
  onPlace: (place: Place) => void;
  onText: (text: string) => void;
}

/** The parts of a lesson, and what can be done with its steps. */
export function StepList({ text, data, place, faults, onPlace, onText }: StepListProps) {
  const id = useId();
  const [kind, setKind] = useState<StepKind>('read');
  const found = fieldOf(data, 'steps');
  const steps: readonly unknown[] = Array.isArray(found) ? found : [];
  const wrongIn = (part: Place) =>
    faults.filter(({ path }) =>
      part === 'dives'
        ? path[0] === 'scripts'
        : part === 'lesson'
          ? path[0] !== 'steps' && path[0] !== 'scripts'
          : path[0] === 'steps' && path[1] === part,
    ).length;
  const part = (own: Place, label: string, kindWord?: string) => {
    const wrong = wrongIn(own);
    return (
      <button
        type="button"
        className={styles.part}
        aria-current={own === place ? 'true' : undefined}
        onClick={() => onPlace(own)}
      >
        <span>{label}</span>
        {kindWord && <span className={styles.kind}>{kindWord}</span>}
        {wrong > 0 && <span className={styles.wrong}>{wrong === 1 ? '1 to mend' : `${wrong} to mend`}</span>}
      </button>
    );
  };
  const move = (to: number, from = place) => {
    if (typeof from !== 'number' || from === to || to < 0 || to >= steps.length) return;
    onText(withEntryMoved(text, ['steps'], from, to));
    onPlace(to);
  };
  const [dragged, setDragged] = useState<number>();
  const [over, setOver] = useState<number>();
  const dragging = (index: number) => ({
    draggable: true,
    'data-over': over === index && dragged !== index ? true : undefined,
    onDragStart: (event: DragEvent) => {
      event.dataTransfer.effectAllowed = 'move';
      setDragged(index);
    },
    onDragOver: (event: DragEvent) => {
      if (dragged === undefined) return;
      event.preventDefault();
      setOver(index);
    },
    onDrop: (event: DragEvent) => {
      event.preventDefault();
      move(index, dragged);
    },
    onDragEnd: () => {
      setDragged(undefined);
      setOver(undefined);
    },
    onKeyDown: (event: KeyboardEvent) => {
      if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
      event.preventDefault();
      const to = index + (event.key === 'ArrowUp' ? -1 : 1);
      move(to, index);
      // The focus goes with the step.
      const list = event.currentTarget.parentElement;
      requestAnimationFrame(() => list?.children[to]?.querySelector('button')?.focus());
    },
  });
  const at = typeof place === 'number' ? place : undefined;

  return (
    <nav aria-label="Parts of the lesson" className={styles.parts}>
      {part('lesson', 'About the lesson')}
      {part('dives', 'Its dives')}
      <ol>
        {steps.map((step, index) => {
          const title = fieldOf(step, 'title');
          const own = stepKind(step);
          return (
            <li key={index} {...dragging(index)}>
              {part(
                index,
                `${index + 1}. ${typeof title === 'string' && title !== '' ? title : 'without a title'}`,
                own && KIND_WORDS[own],
              )}
            </li>
          );
        })}
      </ol>
      {steps.length > 1 && (
        <p className={styles.hint}>Drag a step to move it, or press Alt with an arrow up or down on it.</p>
      )}
      {at !== undefined && (
        <div className={styles.partTools} role="group" aria-label={`Step ${at + 1}`}>
          <Button kind="quiet" aria-label={`Move up step ${at + 1}`} disabled={at === 0} onClick={() => move(at - 1)}>
            Move up
          </Button>
          <Button
            kind="quiet"
            aria-label={`Move down step ${at + 1}`}
            disabled={at >= steps.length - 1}
            onClick={() => move(at + 1)}
          >
            Move down
          </Button>
          <Button
            kind="quiet"
            aria-label={`Copy step ${at + 1}`}
            onClick={() => {
              onText(withStepCopied(text, at));
              onPlace(at + 1);
            }}
          >
            Copy
          </Button>
          <Button
            kind="quiet"
            aria-label={`Remove step ${at + 1}`}
            disabled={steps.length < 2}
            onClick={() => {
              onText(withValue(text, ['steps', at], undefined));
              onPlace(Math.max(0, at - 1));
            }}
          >
            Remove
          </Button>
        </div>
      )}
      <div className={styles.addStep}>
        <label htmlFor={id}>A new step</label>
        <select
          id={id}
          value={kind}
          onChange={(event) => setKind(STEP_KINDS.find((one) => one === event.target.value) ?? 'read')}
        >
          {STEP_KINDS.map((one) => (
            <option key={one} value={one}>
              {KIND_WORDS[one]}
            </option>
          ))}
        </select>
        <Button
          icon="plus"
          aria-label="Add a new step"
          onClick={() => {
            onText(withStep(text, kind, at));
            onPlace(placeOfStep(data, kind, at));
          }}
        >
          Add
        </Button>
      </div>
    </nav>
  );
}

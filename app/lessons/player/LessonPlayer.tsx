'use client';

import { memo, useDeferredValue, useEffect, useRef, useState } from 'react';
import { standingAt, withSeen } from '@/lib/lesson/progress';
import { Button, ButtonLink } from '../../parts/Button';
import { routes } from '../../parts/routes';
import { KIND_WORDS } from '../kind-words';
import { textPath } from '../../parts/lesson-paths';
import type { PreparedLesson } from '../prepared';
import { Prose, ProseLine } from '../../parts/prose/Prose';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import { LinkToStep } from './LinkToStep';
import { StepContents } from './StepContents';
import { StepView } from './StepView';
import { ClassLesson, ResultsSheet } from './now-and-then';
import { TermsInPlace } from './TermsInPlace';
import { useProgress, useLessonProgress } from './progress-store';
import { useStepPlace } from './use-step-place';
import styles from './player.module.css';

interface LessonPlayerProps {
  lesson: PreparedLesson;
  /** Where a lesson goes on to; nothing in the workshop, where a lesson is only tried out. */
  next?: { readonly path: string; readonly title: string } | undefined;
  /** Whether the lesson has pages of its own, for links and sheets. */
  shipped?: boolean;
}

/** A lesson, one step after another. */
export function LessonPlayer({ lesson, next, shipped = true }: LessonPlayerProps) {
  const { slug, steps } = lesson;
  const progress = useLessonProgress(slug);
  const update = useProgress((state) => state.update);
  const { place, go } = useStepPlace(lesson, progress.at, shipped);
  const [presenting, setPresenting] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  const moved = useRef(false);
  // The contents answer a press in the next frame; the step itself, which takes longer to draw, follows.
  const shown = useDeferredValue(place);
  const step = steps[shown];

  useEffect(() => {
    if (!moved.current) return;
    heading.current?.focus({ preventScroll: true });
    heading.current?.closest('section')?.scrollIntoView({ block: 'start' });
  }, [shown]);

  const turnTo = (to: number) => {
    moved.current = true;
    const left = steps[place];
    if (left && to > place) update((before) => withSeen(before, slug, left.id));
    const target = steps[to];
    if (target) update((before) => standingAt(before, slug, target.id));
    go(to);
  };

  if (presenting) {
    return (
      <UnitsFrame>
        <TermsInPlace>
          <ClassLesson
            lesson={lesson}
            place={Math.min(place, steps.length - 1)}
            onTurn={turnTo}
            onEnd={() => setPresenting(false)}
          />
        </TermsInPlace>
      </UnitsFrame>
    );
  }
  return (
    <UnitsFrame>
      <TermsInPlace>
        <div className={styles.player}>
          <StepContents lesson={lesson} place={place} progress={progress} onTurn={turnTo} />
          <div className={styles.main}>
            {shown === 0 && <Opening lesson={lesson} />}
            {step ? (
              <section aria-labelledby={`step-${step.id}`} className={styles.step}>
                <p className={styles.kind}>
                  {KIND_WORDS[step.kind]} · step {shown + 1} of {steps.length}
                </p>
                <h2 id={`step-${step.id}`} ref={heading} tabIndex={-1}>
                  {step.title}
                </h2>
                <OpenStep key={step.id} lesson={lesson} step={step} />
              </section>
            ) : (
              <section aria-labelledby="results" className={styles.step}>
                <h2 id="results" ref={heading} tabIndex={-1}>
                  Your results
                </h2>
                <ResultsSheet lesson={lesson} />
              </section>
            )}
            <div className={`${styles.foot} unprinted`}>
              <Button onClick={() => turnTo(place - 1)} disabled={place === 0}>
                Back
              </Button>
              {step && (
                <Button kind="primary" onClick={() => turnTo(place + 1)}>
                  {shown === steps.length - 1 ? 'To your results' : 'Go on'}
                </Button>
              )}
              {!step && next && (
                <ButtonLink href={next.path} kind="primary">
                  Next: {next.title}
                </ButtonLink>
              )}
              {!step && shipped && <ButtonLink href={routes.lessons.path}>All lessons</ButtonLink>}
              <span className={styles.footTools}>
                {step && shipped && <LinkToStep lesson={lesson} step={step} />}
                <Button kind="quiet" icon="screen" onClick={() => setPresenting(true)}>
                  Present to a class
                </Button>
                {shipped && (
                  <ButtonLink href={textPath(slug)} kind="quiet">
                    Read it as one page
                  </ButtonLink>
                )}
              </span>
            </div>
          </div>
        </div>
      </TermsInPlace>
    </UnitsFrame>
  );
}

const OpenStep = memo(StepView);

function Opening({ lesson }: { lesson: PreparedLesson }) {
  return (
    <div className={styles.opening}>
      {lesson.opening && <Prose html={lesson.opening} />}
      <div className={styles.aims}>
        <div>
          <h2 className={styles.aimsHead}>Afterwards</h2>
          <ul>
            {lesson.objectives.map((html, index) => (
              <li key={index}>
                <ProseLine html={html} />
              </li>
            ))}
          </ul>
        </div>
        {lesson.needs.length > 0 && (
          <div>
            <h2 className={styles.aimsHead}>Before</h2>
            <ul>
              {lesson.needs.map((html, index) => (
                <li key={index}>
                  <ProseLine html={html} />
                </li>
              ))}
            </ul>
          </div>
        )}
      </div>
      {lesson.cautions.map((caution) => (
        <p key={caution} role="note" className={styles.caution}>
          {caution}
        </p>
      ))}
    </div>
  );
}

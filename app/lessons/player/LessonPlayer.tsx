'use client';

import { memo, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import { progressIn, standingAt, withSeen } from '@/lib/lesson/progress';
import { Button, ButtonLink } from '../../parts/Button';
import { Disclosure } from '../../parts/Disclosure';
import { routes } from '../../parts/routes';
import { KIND_WORDS } from '../kind-words';
import { useSheetFoot } from '../../parts/Shell';
import { lessonIn } from '../in-units';
import type { PreparedLesson } from '../prepared';
import { usePreferences } from '../../parts/preferences';
import { Prose, ProseList } from '../../parts/prose/Prose';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import { fillsWindow } from './fills-window';
import { LessonLine } from './LessonLine';
import type { PassedOn } from './PassStepOn';
import { StepChoice, StepContents } from './StepContents';
import { StepView } from './steps/StepView';
import { ClassLesson, LessonTools, PassStepOn, ResultsSheet } from './stage/now-and-then';
import { TermsInPlace } from './TermsInPlace';
import { useProgress } from './progress-store';
import { useStepPlace } from './steps/use-step-place';
import styles from './player.module.css';
import stepStyles from './steps/step.module.css';
import places from './window.module.css';

interface LessonPlayerProps {
  lesson: PreparedLesson;
  /** Where a lesson goes on to; nothing in the workshop, where a lesson is only tried out. */
  next?: { readonly path: string; readonly title: string } | undefined;
  /** Whether the lesson has pages of its own, for links and sheets. */
  shipped?: boolean;
  /** Whether its answers are kept and can be handed in; not so where a lesson in the making is tried out. */
  handsIn?: boolean;
  /** Its text, where it is not on the shelf. */
  own?: string;
}

/** A lesson, one step after another. */
export function LessonPlayer({ lesson: given, next, shipped = true, handsIn = shipped, own }: LessonPlayerProps) {
  const units = usePreferences((state) => state.units);
  const lesson = useMemo(() => lessonIn(given, units), [given, units]);
  const { slug, steps } = lesson;
  const standsAt = useProgress(({ progress }) => progressIn(progress, slug).at);
  const update = useProgress((state) => state.update);
  const { place, go } = useStepPlace(lesson, standsAt, shipped);
  const [presenting, setPresenting] = useState(false);
  const [passing, pass] = useState<PassedOn>();
  const foot = useSheetFoot();
  const body = useRef<HTMLDivElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const moved = useRef(false);
  // The contents answer a press in the next frame; the step itself, which takes longer to draw, follows.
  const shown = useDeferredValue(place);
  const step = steps[shown];

  useEffect(() => {
    if (!moved.current) return;
    heading.current?.focus({ preventScroll: true });
    body.current?.scrollTo?.({ top: 0 });
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
  const inWindow = step !== undefined && fillsWindow(step);
  return (
    <UnitsFrame>
      <TermsInPlace>
        <div className={styles.player}>
          <LessonLine
            title={lesson.title}
            alone={shipped}
            steps={<StepChoice lesson={lesson} place={place} onTurn={turnTo} />}
            tools={
              <LessonTools
                slug={slug}
                shipped={shipped}
                onPresent={() => setPresenting(true)}
                kind={step?.kind}
                whole={shipped || own !== undefined}
                onPass={pass}
              />
            }
          />
          <StepContents lesson={lesson} place={place} onTurn={turnTo} />
          <div ref={body} data-part="step" className={`${places.body} ${styles.main}`}>
            {step ? (
              <section
                aria-labelledby={`step-${step.id}`}
                className={inWindow ? places.window : stepStyles.step}
                data-kind={step.kind}
              >
                <h2 id={`step-${step.id}`} ref={heading} tabIndex={-1}>
                  {step.title}
                </h2>
                <OpenStep key={step.id + units} lesson={lesson} step={step} />
              </section>
            ) : (
              <section aria-labelledby="results" className={stepStyles.step}>
                <h2 id="results" ref={heading} tabIndex={-1}>
                  Your results
                </h2>
                <ResultsSheet lesson={lesson} handsIn={handsIn} />
              </section>
            )}
            {shown === 0 && <Opening lesson={lesson} />}
            {shipped && <div className={`unprinted ${inWindow ? styles.newsOnly : ''}`}>{foot}</div>}
          </div>
          <div className={`${styles.foot} unprinted`}>
            <Button onClick={() => turnTo(place - 1)} disabled={place === 0}>
              Back
            </Button>
            <p>
              {step && (
                <>
                  {KIND_WORDS[step.kind]} · step {shown + 1} of {steps.length}
                </>
              )}
            </p>
            {step && (
              <Button kind="primary" onClick={() => turnTo(place + 1)}>
                {shown === steps.length - 1 ? 'To your results' : 'Go on'}
              </Button>
            )}
            {!step && shipped && <ButtonLink href={routes.lessons.path}>All lessons</ButtonLink>}
            {!step && next && (
              <ButtonLink href={next.path} kind="primary">
                Next: {next.title}
              </ButtonLink>
            )}
          </div>
        </div>
        {passing && step && (
          <PassStepOn as={passing} lesson={lesson} own={own} step={step} onClose={() => pass(undefined)} />
        )}
      </TermsInPlace>
    </UnitsFrame>
  );
}

const OpenStep = memo(StepView);

/** What the lesson is about, under its first step: whoever wants to know opens it. */
function Opening({ lesson }: { lesson: PreparedLesson }) {
  return (
    <div className={styles.opening}>
      <p>
        {lesson.number === undefined ? 'Lesson' : `Lesson ${lesson.number}`} · {lesson.level} · about {lesson.minutes}{' '}
        min
      </p>
      {lesson.cautions.map((caution) => (
        <p key={caution} role="note" className={styles.caution}>
          {caution}
        </p>
      ))}
      <Disclosure summary="About this lesson">
        {lesson.opening && <Prose html={lesson.opening} />}
        <div className={styles.aims}>
          <Aims head="Afterwards" lines={lesson.objectives} />
          <Aims head="Before" lines={lesson.needs} />
        </div>
      </Disclosure>
    </div>
  );
}

function Aims({ head, lines }: { head: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div>
      <h2 className={styles.aimsHead}>{head}</h2>
      <ProseList lines={lines} />
    </div>
  );
}

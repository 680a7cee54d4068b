'use client';

import '../../../parts/formulas.css';
import { useEffect, useState } from 'react';
import { standingAt, withoutLesson } from '@/lib/lesson/progress';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { LessonPlayer } from '../../player/LessonPlayer';
import { useProgress } from '../../player/progress-store';
import { StageWaiting } from '../../player/stage/StageWaiting';
import type { PreparedLesson } from '../../prepared';
import { usePrepared } from './use-prepared';
import styles from '../workshop.module.css';
import tried from './try-out.module.css';

/** What answers given in the look go under; they are forgotten with it. */
const LOOKED_AT = 'looked-at';

const putAt = (step: string | undefined) =>
  useProgress.getState().update((before) => {
    const fresh = withoutLesson(before, LOOKED_AT);
    return step === undefined ? fresh : standingAt(fresh, LOOKED_AT, step);
  });

interface LookProps {
  text: string;
  known: KnownNames;
  /** The step that is being written. */
  step: string | undefined;
  on: 'phone' | 'projector';
}

/** The lesson as it is being written, at the step that is being written: it follows what is typed once that makes sense. */
export function LookBeside({ text, known, step, on }: LookProps) {
  const made = usePrepared({ text, slug: LOOKED_AT, known });
  const lesson = made && 'lesson' in made ? made.lesson : undefined;
  const [last, setLast] = useState<{ readonly lesson: PreparedLesson; readonly turn: number }>();
  if (lesson && last?.lesson !== lesson) setLast({ lesson, turn: (last?.turn ?? 0) + 1 });
  useEffect(() => {
    putAt(step);
    return () => putAt(undefined);
  }, [step, last]);
  return (
    <section aria-label="As it looks" className={styles.look} data-on={on}>
      {made && 'why' in made && (
        <p className={styles.hint}>
          {last ? 'This is how it looked before. Mend what is told above, and it follows.' : made.why}
        </p>
      )}
      <div className={tried.tryOut} data-on={on} data-beside="">
        {last ? (
          <LessonPlayer key={`${last.turn} ${step}`} lesson={last.lesson} shipped={false} />
        ) : (
          made === undefined && <StageWaiting />
        )}
      </div>
    </section>
  );
}

'use client';

import '../../parts/formulas.css';
import { useEffect } from 'react';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { withoutLesson } from '@/lib/lesson/progress';
import { LessonPlayer } from '../player/LessonPlayer';
import { useProgress } from '../player/progress-store';
import { StageWaiting } from '../player/StageWaiting';
import { usePrepared } from './use-prepared';
import styles from './workshop.module.css';

interface TryOutProps {
  text: string;
  known: KnownNames;
}

/** What answers given while trying out go under; they are forgotten with the trial. */
const TRIED_OUT = 'tried-out';

const forget = () => useProgress.getState().update((before) => withoutLesson(before, TRIED_OUT));

/** The lesson as a student meets it. It is checked first, whoever wrote it. */
export function TryOut({ text, known }: TryOutProps) {
  const made = usePrepared({ text, slug: TRIED_OUT, known });
  useEffect(() => {
    forget();
    return forget;
  }, [text]);
  if (!made) return <StageWaiting />;
  if ('why' in made) return <p role="alert">{made.why}</p>;
  return (
    <div className={styles.tryOut}>
      <LessonPlayer key={text} lesson={made.lesson} shipped={false} />
    </div>
  );
}

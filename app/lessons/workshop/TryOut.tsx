'use client';

import '../../parts/formulas.css';
import { useEffect, useMemo } from 'react';
import type { KnownNames } from '@/lib/lesson/known';
import { withoutLesson } from '@/lib/lesson/progress';
import { readLesson } from '@/lib/lesson/read-lesson';
import { LessonPlayer } from '../player/LessonPlayer';
import { useProgress } from '../player/progress-store';
import { prepareLesson } from '../prepare-lesson';
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
  const lesson = useMemo(() => {
    const read = readLesson(text, { known });
    return read.ok ? prepareLesson(read.lesson, TRIED_OUT, () => undefined) : undefined;
  }, [text, known]);
  useEffect(() => {
    forget();
    return forget;
  }, [text]);
  if (!lesson) return <p>There are things to mend before the lesson can be tried.</p>;
  return (
    <div className={styles.tryOut}>
      <LessonPlayer key={text} lesson={lesson} shipped={false} />
    </div>
  );
}

'use client';

import '../../../parts/formulas.css';
import { useEffect, useState } from 'react';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { withoutLesson } from '@/lib/lesson/progress';
import { LessonPlayer } from '../../player/LessonPlayer';
import { useProgress } from '../../player/progress-store';
import { StageWaiting } from '../../player/stage/StageWaiting';
import { Segmented } from '../../../parts/Segmented';
import { usePrepared } from './use-prepared';
import styles from './try-out.module.css';

interface TryOutProps {
  text: string;
  known: KnownNames;
  /** Under which name answers are kept, to be gone on with and handed in; left out, they are forgotten with the trial. */
  keptAs?: string;
}

/** What answers given while trying out go under; they are forgotten with the trial. */
const TRIED_OUT = 'tried-out';

/** Windows a lesson should be looked at in before it is passed on. */
const WINDOWS = [
  { value: 'wide', label: 'This window' },
  { value: 'projector', label: 'A projector, 1024 px' },
  { value: 'phone', label: 'A phone, 390 px' },
] as const;

const forget = () => useProgress.getState().update((before) => withoutLesson(before, TRIED_OUT));

/** The lesson as a student meets it. It is checked first, whoever wrote it. */
export function TryOut({ text, known, keptAs }: TryOutProps) {
  const [on, setOn] = useState<(typeof WINDOWS)[number]['value']>('wide');
  const made = usePrepared({ text, slug: keptAs ?? TRIED_OUT, known });
  useEffect(() => {
    if (keptAs !== undefined) return undefined;
    forget();
    return forget;
  }, [text, keptAs]);
  if (!made) return <StageWaiting />;
  if ('why' in made) return <p role="alert">{made.why}</p>;
  if (keptAs !== undefined) return <LessonPlayer key={text} lesson={made.lesson} own={text} shipped={false} handsIn />;
  return (
    <>
      <Segmented label="As seen on" segments={WINDOWS} value={on} onChange={setOn} />
      <div className={styles.tryOut} data-on={on}>
        <LessonPlayer key={text} lesson={made.lesson} own={text} shipped={false} />
      </div>
    </>
  );
}

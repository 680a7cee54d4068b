import { useEffect, useState } from 'react';
import type { PreparedLesson } from '../../prepared';
import { askWorker } from '../faults/ask-worker';
import type { Unprepared } from './prepare-text';

type Prepared = { readonly lesson: PreparedLesson } | { readonly why: string };

const FAULTY = 'There are things to mend before the lesson can be tried.';

/** A lesson made ready in a worker. Undefined until then; words where it can't be had. */
export function usePrepared({ text, slug, known }: Unprepared): Prepared | undefined {
  const [made, setMade] = useState<{ readonly text: string; readonly as: Prepared }>();
  useEffect(() => {
    let wanted = true;
    const tell = (lesson: PreparedLesson | undefined) =>
      wanted && setMade({ text, as: lesson ? { lesson } : { why: FAULTY } });
    if (typeof Worker === 'undefined') {
      void import('./prepare-text').then(({ prepareText }) => tell(prepareText({ text, slug, known })));
      return () => {
        wanted = false;
      };
    }
    return askWorker(
      { text, slug, known },
      (lesson) => tell(lesson as PreparedLesson | undefined),
      ({ what, mend }) => setMade({ text, as: { why: `${what} ${mend}` } }),
    );
  }, [text, slug, known]);
  return made?.text === text ? made.as : undefined;
}

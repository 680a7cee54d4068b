import { useEffect, useState } from 'react';
import type { LessonFault } from '@/lib/lesson/checking/fault';
import type { PreparedLesson } from '../prepared';
import type { Unprepared } from './prepare-text';
import { LONGEST_CHECK_MS, TOO_SLOW, UNFETCHED } from './use-check';

type Prepared = { readonly lesson: PreparedLesson } | { readonly why: string };

const FAULTY = 'There are things to mend before the lesson can be tried.';

/**
 * A lesson made ready in a worker: whoever wrote it may have asked for seconds of work, and the page answers meanwhile.
 * Undefined until then; words where it can't be had.
 */
export function usePrepared({ text, slug, known }: Unprepared): Prepared | undefined {
  const [made, setMade] = useState<{ readonly text: string; readonly as: Prepared }>();
  useEffect(() => {
    let wanted = true;
    const tell = (lesson: PreparedLesson | undefined) =>
      wanted && setMade({ text, as: lesson ? { lesson } : { why: FAULTY } });
    const refuse = ({ what, mend }: LessonFault) => wanted && setMade({ text, as: { why: `${what} ${mend}` } });
    if (typeof Worker === 'undefined') {
      void import('./prepare-text').then(({ prepareText }) => tell(prepareText({ text, slug, known })));
      return () => {
        wanted = false;
      };
    }
    const worker = new Worker(new URL('./prepare.worker.ts', import.meta.url), { type: 'module' });
    const late = setTimeout(() => refuse(TOO_SLOW), LONGEST_CHECK_MS);
    worker.onmessage = ({ data }: MessageEvent<PreparedLesson | undefined>) => {
      clearTimeout(late);
      tell(data);
    };
    worker.onerror = () => {
      clearTimeout(late);
      refuse(UNFETCHED);
    };
    worker.postMessage({ text, slug, known } satisfies Unprepared);
    return () => {
      wanted = false;
      clearTimeout(late);
      worker.terminate();
    };
  }, [text, slug, known]);
  return made?.text === text ? made.as : undefined;
}

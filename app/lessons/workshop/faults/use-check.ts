import { useEffect, useRef, useState } from 'react';
import type { LessonFault } from '@/lib/lesson/checking/fault';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import type { CheckAnswer, CheckRequest } from './check.worker';
import { LONGEST_CHECK_MS, TOO_SLOW, UNFETCHED } from './worker-faults';

/** How long the writer rests before the lesson is checked, ms. */
const RESTS_MS = 350;
export interface Checked {
  /** Of the text checked last; undefined before any was. */
  readonly faults: readonly LessonFault[] | undefined;
  /** Whether the text has changed since. */
  readonly checking: boolean;
}

/** Checks a lesson's text in a worker whenever it rests; typing is never held up. */
export function useCheck(text: string, known: KnownNames): Checked {
  const [checked, setChecked] = useState<{ text: string; faults: readonly LessonFault[] }>();
  const worker = useRef<Worker | undefined>(undefined);
  const number = useRef(0);

  useEffect(() => () => worker.current?.terminate(), []);

  useEffect(() => {
    let late: ReturnType<typeof setTimeout> | undefined;
    const rest = setTimeout(() => {
      number.current += 1;
      const own = number.current;
      const tell = (faults: readonly LessonFault[]) => {
        clearTimeout(late);
        if (own === number.current) setChecked({ text, faults });
      };
      if (typeof Worker === 'undefined') {
        void import('@/lib/lesson/read-lesson').then(({ readLesson }) => {
          const read = readLesson(text, { known });
          tell(read.ok ? [] : read.faults);
        });
        return;
      }
      worker.current ??= new Worker(new URL('./check.worker.ts', import.meta.url), { type: 'module' });
      worker.current.onmessage = ({ data }: MessageEvent<CheckAnswer>) => {
        if (data.number === own) tell(data.faults);
      };
      worker.current.onerror = () => {
        worker.current = undefined;
        tell([UNFETCHED]);
      };
      worker.current.postMessage({ number: own, text, known } satisfies CheckRequest);
      late = setTimeout(() => {
        worker.current?.terminate();
        worker.current = undefined;
        tell([TOO_SLOW]);
      }, LONGEST_CHECK_MS);
    }, RESTS_MS);
    return () => {
      clearTimeout(rest);
      clearTimeout(late);
    };
  }, [text, known]);

  return { faults: checked?.faults, checking: checked?.text !== text };
}

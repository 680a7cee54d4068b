import { useEffect, useRef, useState } from 'react';
import type { LessonFault } from '@/lib/lesson/checking/fault';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import type { CheckAnswer, CheckRequest } from './check.worker';

/** How long the writer rests before the lesson is checked, ms. */
const RESTS_MS = 350;
/** A lesson that keeps the checker busy longer than this was made to, ms. */
export const LONGEST_CHECK_MS = 20_000;

export interface Checked {
  /** Of the text checked last; undefined before any was. */
  readonly faults: readonly LessonFault[] | undefined;
  /** Whether the text has changed since. */
  readonly checking: boolean;
}

export const TOO_SLOW: LessonFault = {
  line: 1,
  path: [],
  what: 'This lesson takes too long to work out.',
  mend: 'Shorten its dives, or ask for less in its questions.',
};
/** Where a worker can't be had. */
export const UNFETCHED: LessonFault = {
  line: 1,
  path: [],
  what: 'What works a lesson out could not be fetched; you may be offline.',
  mend: 'Nothing is lost: change the text or load the page again once you are back.',
};

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

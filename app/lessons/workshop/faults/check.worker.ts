import type { LessonFault } from '@/lib/lesson/checking/fault';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { readLesson } from '@/lib/lesson/read-lesson';

/** A lesson's text to be checked, with a number to tell the answers apart. */
export interface CheckRequest {
  readonly number: number;
  readonly text: string;
  readonly known: KnownNames;
}

export interface CheckAnswer {
  readonly number: number;
  readonly faults: readonly LessonFault[];
}

self.onmessage = ({ data: { number, text, known } }: MessageEvent<CheckRequest>) => {
  const read = readLesson(text, { known });
  postMessage({ number, faults: read.ok ? [] : read.faults } satisfies CheckAnswer);
};

import type { LessonFault } from '@/lib/lesson/checking/fault';
import type { Asked } from '../editor/answer-to';
import { LONGEST_CHECK_MS, TOO_SLOW, UNFETCHED } from './worker-faults';

/**
 * Asks a worker for something of a lesson's text: whoever wrote it may have asked for seconds of work, and the page answers
 * meanwhile. Until what it returns is called, `tell` gets the answer of `answerTo`, or `refuse` why there is none.
 */
export function askWorker(
  asked: Asked,
  tell: (answer: unknown) => void,
  refuse: (fault: LessonFault) => void,
): () => void {
  const worker = new Worker(new URL('../looks/prepare.worker.ts', import.meta.url), { type: 'module' });
  const stop = () => {
    clearTimeout(late);
    worker.terminate();
  };
  const late = setTimeout(() => {
    stop();
    refuse(TOO_SLOW);
  }, LONGEST_CHECK_MS);
  worker.onmessage = ({ data }: MessageEvent<unknown>) => {
    clearTimeout(late);
    tell(data);
  };
  worker.onerror = () => {
    stop();
    refuse(UNFETCHED);
  };
  worker.postMessage(asked);
  return stop;
}

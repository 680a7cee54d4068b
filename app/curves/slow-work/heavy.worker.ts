import { ourFault } from '../../parts/our-fault';
import { heavyWork, type HeavyJob, type HeavyProgress, type HeavyResult } from './heavy-work';

/** What the worker tells: how far it has come, then what it found or why it could not. */
export type HeavyMessage = { progress: HeavyProgress } | { result: HeavyResult<HeavyJob> } | { failure: string };

onmessage = ({ data: job }: MessageEvent<HeavyJob>) => {
  try {
    const work = heavyWork(job);
    for (;;) {
      const step = work.next();
      if (step.done) {
        postMessage({ result: step.value } satisfies HeavyMessage);
        return;
      }
      postMessage({ progress: step.value } satisfies HeavyMessage);
    }
  } catch (error) {
    postMessage({ failure: ourFault(error) } satisfies HeavyMessage);
  }
};

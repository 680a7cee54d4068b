import { useCallback, useEffect, useRef, useState } from 'react';
import type { HeavyJob, HeavyProgress, HeavyResult } from './heavy-work';
import type { HeavyMessage } from './heavy.worker';

export interface HeavyState<Job extends HeavyJob> {
  readonly standing: 'working' | 'done' | 'stopped' | 'failed';
  readonly progress: HeavyProgress | undefined;
  readonly failure: string | undefined;
  /** The last job that came to its end, kept while another is worked out or after one is stopped. */
  readonly last: { readonly job: Job; readonly result: HeavyResult<Job> } | undefined;
}

/** Typing is let finish before work on it begins. */
const SETTLE_MS = 300;

/**
 * Works a job out in a thread of its own whenever it changes; `stop` ends that thread, `again` starts the same job anew. Keep the
 * job the same object while nothing in it changes.
 */
export function useHeavyWork<Job extends HeavyJob>(
  job: Job,
): HeavyState<Job> & { stop: () => void; again: () => void } {
  const [state, setState] = useState<HeavyState<Job>>({
    standing: 'working',
    progress: undefined,
    failure: undefined,
    last: undefined,
  });
  const worker = useRef<Worker>(undefined);
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);

  const end = useCallback(() => {
    clearTimeout(waiting.current);
    worker.current?.terminate();
    worker.current = undefined;
  }, []);

  const stop = useCallback(() => {
    end();
    setState((before) => ({ ...before, standing: 'stopped', progress: undefined }));
  }, [end]);

  const begin = useCallback(
    (of: Job) => {
      end();
      const own = new Worker(new URL('./heavy.worker.ts', import.meta.url), { type: 'module' });
      worker.current = own;
      const fail = (failure: string) => {
        end();
        setState((before) => ({ ...before, standing: 'failed', progress: undefined, failure }));
      };
      own.onerror = () =>
        fail(
          'The work could not be started in this browser. Reload the page; if that does not help, try another browser.',
        );
      own.onmessage = ({ data }: MessageEvent<HeavyMessage>) => {
        // What was already on its way when the work was stopped.
        if (worker.current !== own) return undefined;
        if ('progress' in data) return setState((before) => ({ ...before, progress: data.progress }));
        end();
        if ('failure' in data) return fail(data.failure);
        return setState({
          standing: 'done',
          progress: undefined,
          failure: undefined,
          last: { job: of, result: data.result as HeavyResult<Job> },
        });
      };
      setState((before) => ({ ...before, standing: 'working', progress: undefined, failure: undefined }));
      own.postMessage(of);
    },
    [end],
  );

  useEffect(() => {
    waiting.current = setTimeout(() => begin(job), SETTLE_MS);
    return end;
  }, [job, begin, end]);

  return { ...state, stop, again: () => begin(job) };
}

import { useEffect, useState } from 'react';
import type { GroupResult } from './evidence.worker';

export type Results = ReadonlyMap<string, GroupResult>;

/** Runs every check in a worker, once, and gives the results as they come in. */
export function useEvidence(): { results: Results; failure: string | undefined } {
  const [results, setResults] = useState<Results>(new Map());
  const [failure, setFailure] = useState<string>();
  useEffect(() => {
    const worker = new Worker(new URL('./evidence.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<GroupResult>) =>
      setResults((before) => new Map(before).set(data.id, data));
    worker.onerror = () =>
      setFailure(
        'The checks could not be started in this browser. Reload the page; if that does not help, try another browser.',
      );
    return () => worker.terminate();
  }, []);
  return { results, failure };
}

import { useEffect, useState } from 'react';
import type { WaysAsked, WaysFound } from './ways-out.worker';

export interface WaysAnswer {
  readonly asked: WaysAsked;
  readonly found?: WaysFound;
  readonly failure?: string;
}

/** Typing and dragging are let finish before work on them begins. */
const SETTLE_MS = 200;

/**
 * Asks a worker what would have avoided it, anew whenever the question changes; the page goes on meanwhile. The answer to
 * an earlier question stays until the new one is there. Keep the question the same object while nothing in it changes.
 */
export function useWaysOut(asked: WaysAsked): WaysAnswer | undefined {
  const [answer, setAnswer] = useState<WaysAnswer>();
  useEffect(() => {
    let worker: Worker | undefined;
    const waiting = setTimeout(() => {
      worker = new Worker(new URL('./ways-out.worker.ts', import.meta.url), { type: 'module' });
      worker.onerror = () =>
        setAnswer({
          asked,
          failure: 'The search could not be started in this browser. Reload the page and ask again.',
        });
      worker.onmessage = ({ data }: MessageEvent<WaysFound | { failure: string }>) =>
        setAnswer('failure' in data ? { asked, failure: data.failure } : { asked, found: data });
      worker.postMessage(asked);
    }, SETTLE_MS);
    return () => {
      clearTimeout(waiting);
      worker?.terminate();
    };
  }, [asked]);
  return answer;
}

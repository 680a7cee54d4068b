import { readEvents } from './read-events';

/** How a line that was asked for turned out. */
type LineEnd = 'cut' | 'refused' | 'missing';

interface LastingLine {
  /** Asks for the line. */
  readonly ask: (signal: AbortSignal) => Promise<Response>;
  readonly onEvent: (event: string, data: unknown) => void;
  /** The line stands. */
  readonly onOpen: () => void;
  /** It doesn't, and is asked for again soon; at once where what is returned says so. It is waited for first. */
  readonly onEnd: (end: LineEnd) => Promise<boolean> | void;
}

/** A line on which nothing is heard for so long is dead: the server beats oftener. */
const DEAD_MS = 12_000;
/** Between two asks for it, at least and at most: phones don't all come at once. */
const WAIT_MS = { least: 400, most: 2500 };

/** Holds a line to the server, through sleep, lost networks and servers that are started anew, until the returned is called. */
export function lastingLine({ ask, onEvent, onOpen, onEnd }: LastingLine): () => void {
  let over = false;
  let current: AbortController | undefined;
  let heardMs = 0;
  let wake: () => void = () => undefined;
  const again = () => {
    if (document.visibilityState === 'hidden') return;
    if (Date.now() - heardMs > DEAD_MS) current?.abort();
    wake();
  };
  const lost = () => current?.abort();
  const watch = setInterval(() => {
    if (current && Date.now() - heardMs > DEAD_MS) current.abort();
  }, 1000);
  window.addEventListener('online', again);
  window.addEventListener('offline', lost);
  document.addEventListener('visibilitychange', again);

  const run = async () => {
    for (let misses = 0; !over; misses += 1) {
      current = new AbortController();
      heardMs = Date.now();
      let end: LineEnd = 'cut';
      try {
        const response = await ask(current.signal);
        if (response.ok && response.body) {
          misses = 0;
          onOpen();
          await readEvents(response, onEvent, () => (heardMs = Date.now()));
        } else end = response.status === 404 ? 'missing' : response.status === 429 ? 'cut' : 'refused';
      } catch {
        // Cut, by whoever: it is asked for again.
      }
      current = undefined;
      if (over) return;
      if ((await onEnd(end)) && misses < 3) continue;
      await new Promise<void>((go) => {
        wake = go;
        setTimeout(go, Math.min(WAIT_MS.most, WAIT_MS.least * 1.5 ** misses) * (0.7 + 0.6 * Math.random()));
      });
    }
  };
  void run();
  return () => {
    over = true;
    clearInterval(watch);
    window.removeEventListener('online', again);
    window.removeEventListener('offline', lost);
    document.removeEventListener('visibilitychange', again);
    current?.abort();
    wake();
  };
}

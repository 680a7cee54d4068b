/** A hand that has done nothing for so long may be thinking, or reading. */
const REST_MS = 2000;

const DOINGS = ['pointerdown', 'pointermove', 'keydown', 'wheel'] as const;

/** Calls back once the page has loaded and nobody has done anything on it for two seconds; not at all once `signal` aborts. */
export function atRest(then: () => void, signal: AbortSignal): void {
  const watching = new AbortController();
  const { signal: over } = watching;
  let timer = 0;
  const done = () => {
    watching.abort();
    then();
  };
  const wait = () => {
    window.clearTimeout(timer);
    if (document.readyState === 'complete') timer = window.setTimeout(done, REST_MS);
  };
  const giveUp = () => {
    watching.abort();
    window.clearTimeout(timer);
  };
  signal.addEventListener('abort', giveUp, { once: true });
  for (const doing of ['load', ...DOINGS])
    window.addEventListener(doing, wait, { signal: over, passive: true, capture: true });
  wait();
}

import { atRest } from './at-rest';
import { offlineFiles } from './offline-files';

/** What a window hears about the copy of the site that its browser keeps. */
export interface CopyNews {
  /** All of the site is kept: it opens without a network from now on. */
  kept: () => void;
  /** A newer copy is fetched and waits; `use` opens it in this window. */
  newer: (use: () => void) => void;
  /** Another window went over to a newer copy; this one still shows the older. */
  replaced: () => void;
}

/**
 * Has the browser keep a copy of the site, and tells what becomes of it; nothing is opened anew unless `use` is called.
 * Where the browser keeps none, nothing is told and the site works from the network. Fetching all of it takes seconds of
 * a small machine, so it begins once the page is at rest. Call what it returns to hear no more.
 */
export function keepCopy(news: CopyNews): () => void {
  const hush = new AbortController();
  const { signal } = hush;
  atRest(() => {
    // Some browsers refuse even the question, such as in a frame that may keep nothing.
    watch(news, signal).catch(() => undefined);
  }, signal);
  return () => hush.abort();
}

async function watch(news: CopyNews, signal: AbortSignal): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const workers = navigator.serviceWorker;
  let asked = false;
  let hasCopy = workers.controller !== null;
  workers.addEventListener(
    'controllerchange',
    () => {
      if (hasCopy && !asked) news.replaced();
      hasCopy = true;
    },
    { signal },
  );

  const offer = (waiting: ServiceWorker) => {
    const use = () => {
      asked = true;
      waiting.addEventListener('statechange', () => waiting.state === 'activated' && window.location.reload(), {
        signal,
      });
      waiting.postMessage({ type: 'SKIP_WAITING' });
    };
    news.newer(use);
  };
  const registration = await workers.register(`/${offlineFiles.worker}`, { updateViaCache: 'none' });
  const follow = (coming: ServiceWorker | null) =>
    coming?.addEventListener(
      'statechange',
      () => coming.state === 'installed' && registration.active && offer(coming),
      { signal },
    );
  registration.addEventListener('updatefound', () => follow(registration.installing), { signal });
  follow(registration.installing);
  if (signal.aborted) return;
  if (registration.waiting && registration.active) offer(registration.waiting);
  await workers.ready;
  if (!signal.aborted) news.kept();
}

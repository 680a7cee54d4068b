import { useSyncExternalStore } from 'react';

let printing = false;

function subscribe(tell: () => void): () => void {
  const media = matchMedia('print');
  const set = (now: boolean) => {
    printing = now;
    tell();
  };
  const before = () => set(true);
  const after = () => set(media.matches);
  const changed = () => set(media.matches);
  window.addEventListener('beforeprint', before);
  window.addEventListener('afterprint', after);
  media.addEventListener('change', changed);
  return () => {
    window.removeEventListener('beforeprint', before);
    window.removeEventListener('afterprint', after);
    media.removeEventListener('change', changed);
  };
}

/** Whether the page is being printed, so that what only paper needs is drawn only then. */
export function usePrinting(): boolean {
  return useSyncExternalStore(
    subscribe,
    () => printing,
    () => false,
  );
}

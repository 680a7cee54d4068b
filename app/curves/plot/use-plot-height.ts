import { useSyncExternalStore } from 'react';

/** What stands above and below a plot while its plate lies in one window: the line, the thumbnails, words, slider, readings. */
const AROUND = 560;
const LEAST = 204;

function onResize(tell: () => void) {
  window.addEventListener('resize', tell);
  return () => window.removeEventListener('resize', tell);
}

/** The height of a plot so that its plate lies in one window, at most so many pixels; `words` is what its own title takes. */
export function usePlotHeight(most: number, words: number): number {
  const room = useSyncExternalStore(
    onResize,
    () => window.innerHeight,
    () => most + AROUND + words,
  );
  return Math.round(Math.min(most, Math.max(LEAST, room - AROUND - words)));
}

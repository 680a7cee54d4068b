import { useSyncExternalStore } from 'react';

/** What a canvas must be drawn again for, though no number in it has changed: the colours of the page and how fine its pixels are. */
export interface Screen {
  readonly pixelRatio: number;
  /** Counts the changes of theme, and of paper for screen. */
  readonly theme: number;
}

let screen: Screen = { pixelRatio: 1, theme: 0 };
const BEFORE: Screen = screen;

function subscribe(tell: () => void) {
  const themed = () => {
    screen = { ...screen, theme: screen.theme + 1 };
    tell();
  };
  const resized = () => {
    if (screen.pixelRatio === devicePixelRatio) return;
    screen = { ...screen, pixelRatio: devicePixelRatio };
    tell();
  };
  const observer = new MutationObserver(themed);
  observer.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  const media = ['(prefers-color-scheme: dark)', 'print'].map((query) => matchMedia(query));
  for (const one of media) one.addEventListener('change', themed);
  window.addEventListener('resize', resized);
  resized();
  return () => {
    observer.disconnect();
    for (const one of media) one.removeEventListener('change', themed);
    window.removeEventListener('resize', resized);
  };
}

export function useScreen(): Screen {
  return useSyncExternalStore(
    subscribe,
    () => screen,
    () => BEFORE,
  );
}

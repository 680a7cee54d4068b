import { useLayoutEffect, type RefObject } from 'react';

/** Tells the page how tall the strip of controls along its foot is, so that messages and lists stay above it. */
export function useStripHeight(strip: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const { style } = document.documentElement;
    const measure = () => style.setProperty('--status-lift', `${Math.ceil(strip.current?.offsetHeight ?? 0)}px`);
    measure();
    const observer = typeof ResizeObserver === 'undefined' ? undefined : new ResizeObserver(measure);
    if (strip.current) observer?.observe(strip.current);
    return () => {
      observer?.disconnect();
      style.removeProperty('--status-lift');
    };
  }, [strip]);
}

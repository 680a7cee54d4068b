import { useLayoutEffect, useRef, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * The size an element has been given, in whole CSS pixels; undefined until it has been measured. Its style has it too, as
 * `--given-width` and `--given-height`: a picture as large as a share of its room would have all its letters set anew
 * whenever the room's layout is worked out in two passes, which a change of a sentence beside it is enough for.
 */
export function useSize<Kind extends HTMLElement>() {
  const ref = useRef<Kind>(null);
  const [size, setSize] = useState<Size>();
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(([entry]) => {
      const width = Math.round(entry!.contentRect.width);
      const height = Math.floor(entry!.contentRect.height);
      if (width <= 0) return;
      element.style.setProperty('--given-width', `${width}px`);
      element.style.setProperty('--given-height', `${height}px`);
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, size };
}

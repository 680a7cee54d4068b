import { useLayoutEffect, useRef, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size an element has been given, in whole CSS pixels; undefined until it has been measured. */
export function useSize<Kind extends Element>() {
  const ref = useRef<Kind>(null);
  const [size, setSize] = useState<Size>();
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(([entry]) => {
      const width = Math.round(entry!.contentRect.width);
      const height = Math.floor(entry!.contentRect.height);
      if (width <= 0) return;
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, size };
}

import { useLayoutEffect, useRef, useState } from 'react';

/** The width an element has been given, in CSS pixels; `first` until it has been `measured`. */
export function useWidth<Kind extends Element>(first: number) {
  const ref = useRef<Kind>(null);
  const [width, setWidth] = useState<number>();
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(([entry]) => {
      const measured = Math.round(entry!.contentRect.width);
      if (measured > 0) setWidth(measured);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width: width ?? first, measured: width !== undefined };
}

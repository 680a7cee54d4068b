import { useEffect, useRef, type RefObject } from 'react';

/** When a dive has been steered to its end, the work goes on at Play. */
export function useFocusAfterSteering(part: RefObject<HTMLElement | null>, steering: boolean): void {
  const before = useRef(steering);
  useEffect(() => {
    if (before.current && !steering)
      requestAnimationFrame(() => part.current?.querySelector<HTMLElement>('[data-way="play"]')?.focus());
    before.current = steering;
  }, [part, steering]);
}

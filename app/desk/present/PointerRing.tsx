'use client';

import { useEffect, useRef } from 'react';
import styles from './present.module.css';

/** A soft ring that follows the pointer, always or only while a mouse button or a finger is down. */
export function PointerRing({ always }: { always: boolean }) {
  const ring = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const follow = (event: PointerEvent) => {
      const element = ring.current;
      if (!element) return;
      element.style.translate = `${event.clientX}px ${event.clientY}px`;
      element.dataset['down'] = String(event.buttons > 0);
    };
    const options = { capture: true, passive: true };
    const kinds = ['pointermove', 'pointerdown', 'pointerup', 'pointercancel'] as const;
    for (const kind of kinds) window.addEventListener(kind, follow, options);
    return () => {
      for (const kind of kinds) window.removeEventListener(kind, follow, options);
    };
  }, []);
  return <div ref={ring} className={styles.ring} data-always={always} aria-hidden="true" />;
}

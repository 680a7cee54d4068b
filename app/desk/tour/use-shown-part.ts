import { useLayoutEffect, useState, type RefObject } from 'react';
import { clearestCorner, type Box, type Corner } from './place-card';

export interface ShownPart {
  /** Where the part is in the window; undefined while it is not on the desk. */
  readonly ring: Box | undefined;
  readonly corner: Corner;
}

/** The window is too narrow for a card beside a part: the part goes to the top, and the card below it. */
const NARROW_PX = 768;

/** Brings a part of the desk into view, and tells where it is from then on. */
export function useShownPart(part: string, card: RefObject<HTMLElement | null>): ShownPart {
  const [shown, setShown] = useState<ShownPart>({ ring: undefined, corner: 'bottom left' });

  useLayoutEffect(() => {
    const find = () => document.querySelector<HTMLElement>(part);
    const found = find();
    const tall = found !== null && found.offsetHeight > window.innerHeight * 0.8;
    found?.scrollIntoView({ block: tall || window.innerWidth < NARROW_PX ? 'start' : 'nearest', behavior: 'instant' });

    const measure = () => {
      const ring = find()?.getBoundingClientRect();
      const chart = document.querySelector('[data-picture="profile"]')?.getBoundingClientRect();
      const { offsetWidth: width = 0, offsetHeight: height = 0 } = card.current ?? {};
      const corner = clearestCorner(
        { width, height },
        { width: window.innerWidth, height: window.innerHeight },
        [ring, chart].filter((box) => box !== undefined),
      );
      setShown({ ring, corner });
    };
    measure();
    window.addEventListener('scroll', measure, { capture: true, passive: true });
    window.addEventListener('resize', measure);
    const observer = typeof ResizeObserver === 'undefined' ? undefined : new ResizeObserver(measure);
    observer?.observe(document.body);
    return () => {
      window.removeEventListener('scroll', measure, { capture: true });
      window.removeEventListener('resize', measure);
      observer?.disconnect();
    };
  }, [part, card]);

  return shown;
}

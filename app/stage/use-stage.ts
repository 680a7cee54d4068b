import { useEffect, useEffectEvent, useLayoutEffect, type RefObject } from 'react';
import { usePictureScale } from '../pictures/picture-scale';

/** Type that can be read from the back row: this share of the screen's width or height, whichever is less, and never smaller than usual. */
const TYPE = 'clamp(100%, min(1.5vw, 2.7vh), 300%)';
const USUAL_PX = 16;

/** Makes the page the presenter's: type to the size of the screen, everything outside the stage out of reach. */
export function useStage(stage: RefObject<HTMLElement | null>, size: number, onLeave: () => void, type = TYPE): void {
  useLayoutEffect(() => {
    const root = document.documentElement;
    root.style.fontSize = `calc(${type} * ${size})`;
    const measure = () => {
      const scale = Math.round((parseFloat(getComputedStyle(root).fontSize) / USUAL_PX) * 100) / 100 || 1;
      usePictureScale.setState(scale, true);
    };
    measure();
    window.addEventListener('resize', measure);
    return () => {
      window.removeEventListener('resize', measure);
      root.style.removeProperty('font-size');
      usePictureScale.setState(1, true);
    };
  }, [size, type]);

  useEffect(() => {
    const root = document.documentElement;
    const main = stage.current?.closest('main');
    const others = Array.from(main?.parentElement?.children ?? []).filter(
      (element) => element !== main && !element.matches('[data-part="caution"]'),
    );
    for (const other of others) other.toggleAttribute('inert', true);
    root.dataset['presenting'] = '';
    stage.current?.focus();
    return () => {
      for (const other of others) other.removeAttribute('inert');
      delete root.dataset['presenting'];
    };
  }, [stage]);

  // Full screen is entered once and left once, however often the view is drawn in between.
  const leave = useEffectEvent(onLeave);
  useEffect(() => {
    let entered = false;
    // Not everywhere allowed, and nothing depends on it.
    void document.documentElement.requestFullscreen?.().catch(() => undefined);
    const changed = () => {
      if (document.fullscreenElement) entered = true;
      else if (entered) leave();
    };
    document.addEventListener('fullscreenchange', changed);
    return () => {
      document.removeEventListener('fullscreenchange', changed);
      if (document.fullscreenElement) void document.exitFullscreen().catch(() => undefined);
    };
  }, []);
}

import { useEffect } from 'react';
import { isTypedIn } from '../../parts/typed-in';
import type { steeringOf } from './steering';

const HELD = { ArrowUp: -1, ArrowDown: 1 } as const;
/** A clicker's keys, which are never held. */
const TAPPED = { PageUp: -1, PageDown: 1 } as const;

/** What has a use of its own for these keys. */
const ITS_OWN = 'select, input, [popover], [role="separator"], [role="slider"]:not([data-lever])';
const PRESSED = 'button, a[href], summary';

function isItsOwn(target: EventTarget | null): boolean {
  if (document.querySelector('dialog[open]')) return true;
  return isTypedIn(target) || (target instanceof Element && target.closest(ITS_OWN) !== null);
}

/** While a dive is steered, the keys of the lever work wherever the focus is, and never scroll the page. */
export function useSteeringKeys(steering: ReturnType<typeof steeringOf>): void {
  useEffect(() => {
    const { keyDown, keyUp, notch, set, goOn, wait, letGo } = steering.getState();
    const press = (event: KeyboardEvent) => {
      const { key, target } = event;
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isItsOwn(target)) return;
      const onButton = target instanceof Element && target.closest(PRESSED) !== null;
      if (Object.hasOwn(HELD, key)) keyDown(HELD[key as keyof typeof HELD], event.timeStamp);
      else if (Object.hasOwn(TAPPED, key)) notch(TAPPED[key as keyof typeof TAPPED]);
      else if (key === '0') set(0);
      else if (key === ' ' && !onButton) {
        if (steering.getState().running) wait();
        else goOn();
      } else return;
      event.preventDefault();
    };
    const release = (event: KeyboardEvent) => {
      if (Object.hasOwn(HELD, event.key)) keyUp(event.timeStamp);
    };
    window.addEventListener('keydown', press, { capture: true });
    window.addEventListener('keyup', release, { capture: true });
    window.addEventListener('blur', letGo);
    return () => {
      window.removeEventListener('keydown', press, { capture: true });
      window.removeEventListener('keyup', release, { capture: true });
      window.removeEventListener('blur', letGo);
    };
  }, [steering]);
}

import { useEffect } from 'react';
import { isTypedIn } from '../parts/typed-in';
import { useDeskStore } from '../stage/desk-context';

/** What Space does something to by itself, wherever the focus came from. */
const FIELDS = 'select, input[type="checkbox"], input[type="radio"], dialog[open]';
/** What Space presses while the keyboard is on its way from one to the next. */
const PRESSED = 'button, a[href], summary';

/**
 * Space plays and pauses wherever no field has the focus. What Tab has led to is pressed by it; a button that was
 * clicked has had its press, so that there, too, the key belongs to the dive. A clicker goes on from where playing waits.
 */
export function useSpaceKey(): void {
  const store = useDeskStore();
  useEffect(() => {
    let clicked: EventTarget | null = null;
    const click = (event: PointerEvent) => {
      clicked = event.target instanceof Element ? event.target.closest(PRESSED) : null;
    };
    const press = (event: KeyboardEvent) => {
      const { key, target } = event;
      if (key === 'Tab') clicked = null;
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      const goesOn = key === 'PageDown' && store.getState().heldAtS !== undefined;
      if ((key !== ' ' && !goesOn) || isTypedIn(target)) return;
      if (target instanceof Element && target.closest(FIELDS)) return;
      const pressed = target instanceof Element ? target.closest(PRESSED) : null;
      if (pressed && pressed !== clicked && !goesOn) return;
      event.preventDefault();
      const { playing, play, pause } = store.getState();
      if (playing) pause();
      else play();
    };
    window.addEventListener('pointerdown', click, true);
    window.addEventListener('keydown', press);
    return () => {
      window.removeEventListener('pointerdown', click, true);
      window.removeEventListener('keydown', press);
    };
  }, [store]);
}

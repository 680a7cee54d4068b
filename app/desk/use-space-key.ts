import { useEffect } from 'react';
import { isTypedIn } from '../parts/typed-in';
import { useDeskStore } from '../stage/desk-context';

/** What Space itself does something to, while the keyboard has it in hand. */
const PRESSED = 'button, a[href], summary, select, input[type="checkbox"], input[type="radio"], dialog[open]';

/** Space plays and pauses, and a clicker goes on, but where it is typed, or presses what the keyboard has come to. */
export function useSpaceKey(): void {
  const store = useDeskStore();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      const { key, target } = event;
      // A clicker goes on from where playing waits.
      const clicked = key === 'PageDown' && store.getState().heldAtS !== undefined;
      if (key !== ' ' && !clicked) return;
      if (isTypedIn(target) || (target instanceof Element && target.closest(PRESSED))) return;
      event.preventDefault();
      const { playing, play, pause } = store.getState();
      if (playing) pause();
      else play();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [store]);
}

import { useEffect } from 'react';
import { isTypedIn } from '../parts/typed-in';
import { useDeskStore } from '../stage/desk-context';

/** Ctrl or Cmd with Z undoes, with Shift and Z or with Y redoes; in a box that is typed in, the keys stay the box's own. */
export function useUndoKeys(): void {
  const store = useDeskStore();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey) || isTypedIn(event.target))
        return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) store.getState().redo();
      else store.getState().undo();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [store]);
}

import { useEffect } from 'react';
import { isTypedIn } from '../parts/typed-in';

/** Ctrl or Cmd with Z undoes, with Shift and Z or with Y redoes; in a box that is typed in, the keys stay the box's own. */
export function useUndoKeys(undo: () => void, redo: () => void): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey) || isTypedIn(event.target))
        return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redo();
      else undo();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [undo, redo]);
}

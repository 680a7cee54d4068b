import { useMemo, useState } from 'react';
import { changed, NO_HISTORY, redone, undone, type History } from './history';

/** Undo and redo for one value that is held elsewhere. */
export function useUndo<Value>(value: Value, onValue: (value: Value) => void) {
  const [history, setHistory] = useState<History<Value>>(NO_HISTORY);
  return useMemo(() => {
    const step = (move: typeof undone) => () => {
      const to = move(history, value);
      if (!to) return;
      setHistory(to.history);
      onValue(to.moment);
    };
    return {
      canUndo: history.past.length > 0,
      canRedo: history.future.length > 0,
      /** A change; those in a row with the same `joined` name are undone together. */
      change(next: Value, joined?: string) {
        if (next === value) return;
        setHistory(changed(history, value, joined));
        onValue(next);
      },
      undo: step(undone),
      redo: step(redone),
    };
  }, [history, value, onValue]);
}

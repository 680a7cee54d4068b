import { useCallback, useRef, useState } from 'react';

const UNDO_STEPS = 200;

export interface History {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** A change; changes in a row with the same `joined` name, such as those of typing in one box, are undone together. */
  readonly change: (text: string, joined?: string) => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** Undo and redo for one text that is kept elsewhere. */
export function useHistory(text: string, onText: (text: string) => void): History {
  const past = useRef<string[]>([]);
  const future = useRef<string[]>([]);
  const joining = useRef<string | undefined>(undefined);
  const [{ canUndo, canRedo }, setCan] = useState({ canUndo: false, canRedo: false });
  const tell = () => setCan({ canUndo: past.current.length > 0, canRedo: future.current.length > 0 });

  const change = useCallback(
    (next: string, joined?: string) => {
      if (next === text) return;
      if (joined === undefined || joined !== joining.current) past.current = [...past.current, text].slice(-UNDO_STEPS);
      joining.current = joined;
      future.current = [];
      onText(next);
      tell();
    },
    [text, onText],
  );
  const undo = useCallback(() => {
    const before = past.current.at(-1);
    if (before === undefined) return;
    past.current = past.current.slice(0, -1);
    future.current = [text, ...future.current];
    joining.current = undefined;
    onText(before);
    tell();
  }, [text, onText]);
  const redo = useCallback(() => {
    const [next, ...rest] = future.current;
    if (next === undefined) return;
    past.current = [...past.current, text];
    future.current = rest;
    joining.current = undefined;
    onText(next);
    tell();
  }, [text, onText]);
  return { canUndo, canRedo, change, undo, redo };
}

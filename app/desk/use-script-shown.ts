import { useMemo, useSyncExternalStore, type RefObject } from 'react';
import { useDeskStore } from '../stage/desk-context';
import type { DeskState } from '../stage/desk-state';
import type { DeskStore } from '../stage/desk-store';

/** A text that changes under a drag is shown so often at most, ms: nobody reads it sooner, and it is dear to lay out. */
const EVERY_MS = 100;

/** The desk's script for an editor: a moment behind changes in a row, such as those of a drag, but for those typed there. `catchUp` ends the wait. */
export function useScriptShown(editor: RefObject<HTMLTextAreaElement | null>): {
  readonly script: string;
  readonly catchUp: () => void;
} {
  const store = useDeskStore();
  const { subscribe, shown, catchUp } = useMemo(() => scriptShown(store, editor), [store, editor]);
  return { script: useSyncExternalStore(subscribe, shown, shown), catchUp };
}

function scriptShown(store: DeskStore, editor: RefObject<HTMLTextAreaElement | null>) {
  let { script } = store.getState();
  let shownMs = -Infinity;
  let waiting: number | undefined;
  let heard: (() => void) | undefined;
  const catchUp = () => {
    window.clearTimeout(waiting);
    waiting = undefined;
    shownMs = performance.now();
    script = store.getState().script;
    heard?.();
  };
  const follow = (now: DeskState, before: DeskState) => {
    if (now.script === script) return;
    const inRow = now.joined !== undefined && now.joined === before.joined;
    const leftMs = shownMs + EVERY_MS - performance.now();
    if (!inRow || leftMs <= 0 || document.activeElement === editor.current) catchUp();
    else waiting ??= window.setTimeout(catchUp, leftMs);
  };
  return {
    shown: () => script,
    catchUp,
    subscribe(hear: () => void) {
      heard = hear;
      script = store.getState().script;
      const unsubscribe = store.subscribe(follow);
      return () => {
        unsubscribe();
        window.clearTimeout(waiting);
        waiting = undefined;
      };
    },
  };
}

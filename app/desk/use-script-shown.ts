import { useMemo, useSyncExternalStore, type RefObject } from 'react';
import { useDeskStore } from './desk-context';
import type { DeskStore } from './desk-store';

/** A text that changes under a drag is shown so often at most, ms: nobody reads it sooner, and it is dear to lay out. */
const EVERY_MS = 100;

/** The desk's script for an editor: at once where it is typed there, otherwise a moment behind a drag. `catchUp` ends the wait. */
export function useScriptShown(editor: RefObject<HTMLTextAreaElement | null>): { readonly script: string; readonly catchUp: () => void } {
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
    script = store.getState().script;
    heard?.();
  };
  const inTime = () => {
    shownMs = performance.now();
    catchUp();
  };
  const follow = () => {
    if (store.getState().script === script) return;
    if (document.activeElement === editor.current) catchUp();
    else if (performance.now() - shownMs >= EVERY_MS) inTime();
    else waiting ??= window.setTimeout(inTime, shownMs + EVERY_MS - performance.now());
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

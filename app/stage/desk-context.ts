import { createContext, useCallback, useContext, useSyncExternalStore } from 'react';
import { TYPING } from '../keep/history';
import { oncePainted } from '../parts/after-paint';
import type { DeskState } from './desk-state';
import type { DeskStore } from './desk-store';
import { isMovedByHand } from './jump';

/** The desk a picture or a panel stands on. A lesson has desks of its own, so there is no global one. */
export const DeskContext = createContext<DeskStore | undefined>(undefined);

export function useDeskStore(): DeskStore {
  const store = useContext(DeskContext);
  if (!store) throw new Error('this part needs a desk around it');
  return store;
}

export function useDesk<Part>(select: (state: DeskState) => Part): Part {
  return useDeskStore()(select);
}

/**
 * The desk for what may follow by a frame: a press on the time controls is answered first by them, a key in the script by
 * the script, a point that is pulled by the picture it is pulled in (`pulled`), and then by all else together. While the
 * dive plays, and while it is steered, all goes together from the first.
 */
export function useDeskOncePainted<Part>(select: (state: DeskState) => Part, pulled = false): Part {
  const store = useDeskStore();
  const subscribe = useCallback(
    (tell: () => void) =>
      store.subscribe((now, before) => (follows(now, before, pulled) ? follow(store, tell) : tell())),
    [store, pulled],
  );
  return useSyncExternalStore(
    subscribe,
    () => select(store.getState()),
    () => select(store.getInitialState()),
  );
}

function follows(now: DeskState, before: DeskState, pulled: boolean): boolean {
  if (now.scene === before.scene) return isMovedByHand(now, before);
  return now.joined === TYPING || (now.joined !== undefined && !pulled);
}

const following = new WeakMap<DeskStore, Set<() => void>>();

/** Tells what follows once the frame under the hand is painted, all of it in one go however often the hand moves meanwhile. */
function follow(store: DeskStore, tell: () => void): void {
  const waiting = following.get(store);
  if (waiting) {
    waiting.add(tell);
    return;
  }
  const all = new Set([tell]);
  following.set(store, all);
  oncePainted(() => {
    following.delete(store);
    all.forEach((one) => one());
  });
}

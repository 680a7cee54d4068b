import { createContext, useCallback, useContext, useSyncExternalStore } from 'react';
import { TYPING } from '../keep/history';
import { oncePainted } from '../parts/after-paint';
import type { DeskState, DeskStore } from './desk-store';
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
 * the script, and then by readings and pictures together. While the dive plays, and while it is drawn or steered, all
 * goes together.
 */
export function useDeskOncePainted<Part>(select: (state: DeskState) => Part): Part {
  const store = useDeskStore();
  const subscribe = useCallback(
    (tell: () => void) => store.subscribe((now, before) => (answersAlone(now, before) ? oncePainted(tell) : tell())),
    [store],
  );
  return useSyncExternalStore(
    subscribe,
    () => select(store.getState()),
    () => select(store.getInitialState()),
  );
}

function answersAlone(now: DeskState, before: DeskState): boolean {
  return now.scene === before.scene ? isMovedByHand(now, before) : now.joined === TYPING;
}

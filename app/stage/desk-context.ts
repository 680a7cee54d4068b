import { createContext, useContext } from 'react';
import type { DeskState, DeskStore } from './desk-store';

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

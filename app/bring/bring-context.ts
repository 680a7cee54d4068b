import { createContext, useContext } from 'react';
import type { BringState, BringStore } from './bring-store';

export const BringContext = createContext<BringStore | undefined>(undefined);

export function useBring<Part>(select: (state: BringState) => Part): Part {
  const store = useContext(BringContext);
  if (!store) throw new Error('this part needs a file’s screen around it');
  return store(select);
}

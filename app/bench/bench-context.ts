import { createContext, useContext } from 'react';
import type { BenchState, BenchStore } from './bench-store';

export const BenchContext = createContext<BenchStore | undefined>(undefined);

function useBenchStore(): BenchStore {
  const store = useContext(BenchContext);
  if (!store) throw new Error('this part needs a bench around it');
  return store;
}

export function useBench<Part>(select: (state: BenchState) => Part): Part {
  return useBenchStore()(select);
}

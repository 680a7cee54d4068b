import { useEffect, useState } from 'react';

export type Engine = typeof import('./engine');

let loaded: Engine | undefined;

/** The engine, once it is here; it is fetched the first time a step asks for it. */
export function useEngine(): Engine | undefined {
  const [engine, setEngine] = useState(loaded);
  useEffect(() => {
    if (engine) return undefined;
    let here = true;
    void import('./engine').then((module) => {
      loaded = module;
      if (here) setEngine(module);
    });
    return () => {
      here = false;
    };
  }, [engine]);
  return engine;
}

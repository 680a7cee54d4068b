'use client';

import { useEffect } from 'react';
import { useDeskStore } from './desk-context';
import { longestGoneS } from './jump';
import { useMoments } from './use-course';

/** Has playing wait whenever something happens; one press goes on. */
export function HoldAtEvents() {
  const store = useDeskStore();
  const moments = useMoments();
  useEffect(() => {
    const { waitAt } = store.getState();
    return waitAt((afterS, toS) =>
      toS - afterS > longestGoneS(store.getState())
        ? undefined
        : moments.find(({ timeS, happens }) => happens && timeS > afterS && timeS <= toS)?.timeS,
    );
  }, [store, moments]);
  return null;
}

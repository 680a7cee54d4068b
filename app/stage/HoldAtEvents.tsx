'use client';

import { useEffect } from 'react';
import { useDesk, useDeskStore } from './desk-context';
import { longestGoneS } from './jump';
import { momentIndexAt, SOMETHING_HAPPENS } from './moments';
import { useMoments } from './use-course';

/** Letters from which on a sentence takes more than one line. */
const LONG = 60;

/**
 * Has playing wait whenever something happens; one press goes on. It shows what it is in a line of the class given;
 * without one it is shown elsewhere.
 */
export function HoldAtEvents({ className }: { className: string | undefined }) {
  const store = useDeskStore();
  const heldAtS = useDesk((state) => state.heldAtS);
  const covered = useDesk((state) => state.covered.length > 0);
  const moments = useMoments();
  useEffect(() => {
    const { waitAt } = store.getState();
    return waitAt((afterS, toS) =>
      toS - afterS > longestGoneS(store.getState())
        ? undefined
        : moments.find(({ timeS, happens }) => happens && timeS > afterS && timeS <= toS)?.timeS,
    );
  }, [store, moments]);
  if (heldAtS === undefined || className === undefined) return null;
  const happened = covered ? SOMETHING_HAPPENS : moments[momentIndexAt(moments, heldAtS)]!.name;
  return (
    <p className={className} title={happened} data-long={happened.length > LONG || undefined}>
      {happened} Play goes on.
    </p>
  );
}

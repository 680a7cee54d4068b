'use client';

import { useEffect } from 'react';
import { useDesk, useDeskStore } from './desk-context';
import type { DeskState } from './desk-store';
import { longestGoneS } from './jump';
import { momentIndexAt, type NamedTime } from './moments';
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
  useEffect(
    () =>
      store.subscribe((now, before) => {
        const moment = reached(moments, now, before);
        if (moment) now.hold(moment.timeS);
      }),
    [store, moments],
  );
  if (heldAtS === undefined || className === undefined) return null;
  // What happens would give away what a class is to find.
  const happened = covered ? 'Something happens here.' : moments[momentIndexAt(moments, heldAtS)]!.name;
  return (
    <p className={className} title={happened} data-long={happened.length > LONG || undefined}>
      {happened} Play goes on.
    </p>
  );
}

/** The first moment that playing has just reached or passed, at which something happens. */
function reached(moments: readonly NamedTime[], now: DeskState, before: DeskState): NamedTime | undefined {
  if (!now.playing || now.scene !== before.scene || now.cursorS <= before.cursorS) return undefined;
  if (now.cursorS - before.cursorS > longestGoneS(now)) return undefined;
  return moments.find(({ timeS, happens }) => happens && timeS > before.cursorS && timeS <= now.cursorS);
}

'use client';

import { useEffect, useMemo } from 'react';
import { usePreferences } from '../parts/preferences';
import { chosenWatch } from '../pictures/scene-watches';
import { useDesk, useDeskStore } from './desk-context';
import type { DeskState } from './desk-store';
import { momentIndexAt, momentsOf, type NamedTime } from './moments';

/** A longer way in one change is a jump, s of the clock: whoever jumps over something wants to be past it. */
const JUMP_S = 0.6;

/**
 * Has playing wait whenever something happens; one press goes on. It says what it is in a line of the class given;
 * without one it is said elsewhere.
 */
export function HoldAtEvents({ className }: { className: string | undefined }) {
  const store = useDeskStore();
  const scene = useDesk((state) => state.scene);
  const watch = useDesk(chosenWatch);
  const heldAtS = useDesk((state) => state.heldAtS);
  const covered = useDesk((state) => state.covered.length > 0);
  const units = usePreferences((state) => state.units);
  const moments = useMemo(() => momentsOf(scene, watch, units), [scene, watch, units]);
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
    <p role="status" className={className} title={happened}>
      {happened} Play goes on.
    </p>
  );
}

/** The first moment that playing has just reached or passed, at which something happens. */
function reached(moments: readonly NamedTime[], now: DeskState, before: DeskState): NamedTime | undefined {
  if (!now.playing || now.scene !== before.scene || now.cursorS <= before.cursorS) return undefined;
  if (now.cursorS - before.cursorS > JUMP_S * Number(now.speed)) return undefined;
  return moments.find(({ timeS, happens }) => happens && timeS > before.cursorS && timeS <= now.cursorS);
}

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
 * Has playing wait whenever something happens, and says what; one press goes on. `says` where nothing else on the screen
 * says it.
 */
export function HoldAtEvents({ says }: { says: boolean }) {
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
  if (heldAtS === undefined || !says) return null;
  return (
    <p role="status">
      {/* What happens would give away what a class is to find. */}
      {covered ? 'Something happens here.' : moments[momentIndexAt(moments, heldAtS)]!.name} Press Play to go on.
    </p>
  );
}

/** The first moment that playing has just reached or passed, at which something happens. */
function reached(moments: readonly NamedTime[], now: DeskState, before: DeskState): NamedTime | undefined {
  if (!now.playing || now.scene !== before.scene || now.cursorS <= before.cursorS) return undefined;
  if (now.cursorS - before.cursorS > JUMP_S * Number(now.speed)) return undefined;
  return moments.find(({ timeS, happens }) => happens && timeS > before.cursorS && timeS <= now.cursorS);
}

'use client';

import { useMemo } from 'react';
import { IconButton } from '../parts/IconButton';
import { usePreferences } from '../parts/preferences';
import { useDesk } from './desk-context';
import { chosenWatch } from '../pictures/scene-watches';
import { momentAfter, momentBefore, momentsOf } from './moments';

/** Moves the time cursor to where something happens next, or happened last. */
export function EventSteps() {
  const cursorS = useDesk((state) => state.cursorS);
  const setCursor = useDesk((state) => state.setCursor);
  const scene = useDesk((state) => state.scene);
  const watch = useDesk(chosenWatch);
  const units = usePreferences((state) => state.units);
  const moments = useMemo(() => momentsOf(scene, watch, units), [scene, watch, units]);
  const before = momentBefore(moments, cursorS);
  const after = momentAfter(moments, cursorS);
  return (
    <>
      <IconButton
        icon="eventBack"
        label="To the event before"
        idle={!before}
        onClick={() => before && setCursor(before.timeS)}
      />
      <IconButton
        icon="eventOn"
        label="To the next event"
        idle={!after}
        onClick={() => after && setCursor(after.timeS)}
      />
    </>
  );
}

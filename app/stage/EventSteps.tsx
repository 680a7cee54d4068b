'use client';

import { IconButton } from '../parts/IconButton';
import { useDesk, useDeskOncePainted } from './desk-context';
import { momentAfter, momentBefore } from './moments';
import { useMoments } from './use-course';

/** Moves the time cursor to where something happens next, or happened last. */
export function EventSteps() {
  const cursorS = useDeskOncePainted((state) => state.cursorS);
  const setCursor = useDesk((state) => state.setCursor);
  const moments = useMoments();
  const before = momentBefore(moments, cursorS);
  const after = momentAfter(moments, cursorS);
  return (
    <>
      <IconButton
        icon="eventBack"
        label="To the event before"
        disabled={!before}
        onClick={() => before && setCursor(before.timeS)}
      />
      <IconButton
        icon="eventOn"
        label="To the next event"
        disabled={!after}
        onClick={() => after && setCursor(after.timeS)}
      />
    </>
  );
}

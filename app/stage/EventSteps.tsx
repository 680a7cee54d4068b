'use client';

import { IconButton } from '../parts/IconButton';
import { useDeskOncePainted, useDeskStore } from './desk-context';
import { momentAfter, momentBefore } from './moments';
import { useMoments } from './use-course';

/** Moves the time cursor to where something happens next, or happened last. */
export function EventSteps() {
  const cursorS = useDeskOncePainted((state) => state.cursorS);
  const store = useDeskStore();
  const moments = useMoments();
  const before = momentBefore(moments, cursorS);
  const after = momentAfter(moments, cursorS);
  // Presses may come quicker than the bar is drawn: each goes on from where the last one came to.
  const go = (to: typeof momentAfter) => {
    const { cursorS: nowS, setCursor } = store.getState();
    const moment = to(moments, nowS);
    if (moment) setCursor(moment.timeS);
  };
  return (
    <>
      <IconButton icon="eventBack" label="To the event before" disabled={!before} onClick={() => go(momentBefore)} />
      <IconButton icon="eventOn" label="To the next event" disabled={!after} onClick={() => go(momentAfter)} />
    </>
  );
}

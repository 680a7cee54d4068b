'use client';

import { useEffect, useRef, useState } from 'react';
import { printClock } from '@/lib/quantity/duration';
import { eventText, EVENT_KINDS } from '@/lib/rules/all';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';
import { chosenWatch } from '../desk-store';
import { useDesk } from '../desk-context';
import { PictureFrame } from '../pictures/PictureFrame';
import { saidBy } from './event-voice';
import { sayAloud, silence } from './speech';
import styles from './units.module.css';

/** What the chosen unit told, in sentences that can be read, heard and gone to. */
export function LogFigure() {
  const watch = useDesk(chosenWatch);
  const cursorS = useDesk((state) => state.cursorS);
  const playing = useDesk((state) => state.playing || state.base !== undefined);
  const setCursor = useDesk((state) => state.setCursor);
  const units = usePreferences((state) => state.units);
  const [spoken, setSpoken] = useState(false);
  const told = useRef(cursorS);
  const { events } = watch;

  useEffect(() => {
    const fresh = events.filter((event) => event.timeS > told.current && event.timeS <= cursorS);
    told.current = cursorS;
    if (!playing || fresh.length === 0) return;
    const text = fresh.map((event) => eventText(event, units)).join(' ');
    useStatus.getState().say(text);
    if (spoken) sayAloud(text);
  }, [cursorS, events, playing, spoken, units]);
  useEffect(() => silence, []);

  return (
    <PictureFrame
      id="log"
      title="What the unit tells"
      sentence={
        events.length === 0
          ? `${watch.setup.name}: nothing to tell on this dive.`
          : `${watch.setup.name}: ${events.length} ${events.length === 1 ? 'thing' : 'things'} to tell, each at its time.`
      }
      actions={
        <div className={styles.logActions}>
          <Button kind="quiet" disabled={events.length === 0} onClick={() => sayAloud(events.map((event) => eventText(event, units)).join(' '))}>
            Read it aloud
          </Button>
          <label className={styles.check}>
            <input type="checkbox" checked={spoken} onChange={(event) => setSpoken(event.target.checked)} />
            Speak while it plays
          </label>
        </div>
      }
      columns={[
        { heading: 'Time', cell: (event: (typeof events)[number]) => printClock(event.timeS) },
        { heading: 'What', cell: (event) => EVENT_KINDS[event.kind as keyof typeof EVENT_KINDS] },
        { heading: 'Said by', cell: (event) => (saidBy(event) === 'byModel' ? 'the model’s limit' : 'a rule') },
      ]}
      rows={() => events}
    >
      <ol className={styles.log}>
        {events.map((event, index) => (
          <li key={index} className={`${styles[saidBy(event)]} ${event.timeS <= cursorS ? styles.past : ''}`}>
            <button type="button" onClick={() => setCursor(event.timeS)}>
              {eventText(event, units)}
            </button>
          </li>
        ))}
      </ol>
    </PictureFrame>
  );
}

'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import { printDayClock } from '@/lib/dive/day-clock';
import { Button } from '../../parts/Button';
import { usePreferences } from '../../parts/preferences';
import { chosenWatch } from '../../pictures/scene-watches';
import { AskWaysOut } from '../../working/ways-out/AskWaysOut';
import { EventMark } from '../../pictures/profile/EventMark';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import { sayAloud, silence } from './speech';
import { logEntriesOf, VOICES, type LogEntry } from './log-entries';
import styles from './units.module.css';

/** What the chosen unit told and what became of the gas, in sentences that can be read, heard and gone to. */
export function LogFigure() {
  const scene = useDeskOncePainted((state) => state.scene);
  const watch = useDeskOncePainted(chosenWatch);
  const cursorS = useDeskOncePainted((state) => state.cursorS);
  const playing = useDesk((state) => state.playing || state.base !== undefined);
  const setCursor = useDesk((state) => state.setCursor);
  const units = usePreferences((state) => state.units);
  const [spoken, setSpoken] = useState(false);
  const told = useRef(cursorS);
  const events = useMemo(() => logEntriesOf(scene, watch, units), [scene, watch, units]);
  const supplied = events.filter(({ voice }) => voice === 'bySupply').length;

  useEffect(() => {
    const fresh = events.filter((event) => event.timeS > told.current && event.timeS <= cursorS);
    told.current = cursorS;
    if (!playing || fresh.length === 0) return;
    if (spoken) sayAloud(fresh.map(({ text }) => text).join(' '));
  }, [cursorS, events, playing, spoken]);
  useEffect(() => silence, []);

  return (
    <PictureFrame
      id="log"
      title="What the unit tells"
      sentence={
        (events.length === supplied
          ? `${watch.setup.name}: nothing to tell on this dive.`
          : `${watch.setup.name}: ${count(events.length - supplied)} to tell, each at its time.`) +
        (supplied > 0 ? ` The gas that is left: ${count(supplied)}.` : '')
      }
      actions={
        <div className={styles.logActions}>
          <Button
            kind="quiet"
            disabled={events.length === 0}
            onClick={() => sayAloud(events.map(({ text }) => text).join(' '))}
          >
            Read it aloud
          </Button>
          <label className={styles.check}>
            <input type="checkbox" checked={spoken} onChange={(event) => setSpoken(event.target.checked)} />
            Speak while it plays
          </label>
          {!events.some(({ avoidable }) => avoidable === 'stop') && <AskWaysOut target="stop" reverse />}
        </div>
      }
      columns={[
        { heading: 'Time', cell: (event: LogEntry) => printDayClock(scene.timeline, event.timeS) },
        { heading: 'Mark', cell: (event) => `${events.indexOf(event) + 1}, ${event.word}` },
        { heading: 'What', cell: ({ kind }) => kind },
        { heading: 'Said by', cell: ({ voice }) => VOICES[voice] },
      ]}
      rows={() => events}
    >
      <ol className={styles.log}>
        {events.map((event, index) => (
          <li key={index} className={`${styles[event.voice]} ${event.timeS <= cursorS ? styles.past : ''}`}>
            <svg viewBox="-14 -10 28 20" className={styles.logMark} aria-hidden="true">
              <EventMark voice={event.voice} label={`${index + 1}`} width={index < 9 ? 18 : 25} />
            </svg>
            <span className={styles.logWord}>{event.word}</span>
            <button type="button" onClick={() => setCursor(event.timeS)}>
              {event.text}
            </button>
            {event.avoidable && <AskWaysOut target={event.avoidable} />}
          </li>
        ))}
      </ol>
    </PictureFrame>
  );
}

function count(things: number): string {
  return `${things} ${things === 1 ? 'thing' : 'things'}`;
}

import { EventMark } from '../../pictures/profile/EventMark';
import type { EventVoice } from '../../pictures/profile/event-lane';
import { VOICES } from './log-entries';
import styles from './units.module.css';

const SHORTLY: Readonly<Record<EventVoice, string>> = { byModel: 'model', byRule: 'rule', bySupply: 'gas left' };

/** What the shape of a mark on the dive says: who tells it. The table and the log say it in words. */
export function EventKey({ voices }: { voices: ReadonlySet<EventVoice> }) {
  return (
    <span className={styles.eventKey} aria-hidden="true">
      {(Object.keys(SHORTLY) as EventVoice[])
        .filter((voice) => voices.has(voice))
        .map((voice) => (
          <span key={voice} title={`Told by ${VOICES[voice]}`}>
            <svg viewBox="-10 -10 20 20">
              <EventMark voice={voice} label="" />
            </svg>
            {SHORTLY[voice]}
          </span>
        ))}
    </span>
  );
}

import { useMemo } from 'react';
import { usePreferences } from '../../parts/preferences';
import { EventMark } from '../../pictures/profile/EventMark';
import type { EventVoice } from '../../pictures/profile/event-lane';
import { useCourse } from '../use-course';
import { logEntriesOf, VOICES } from './log-entries';
import styles from './units.module.css';

const SHORTLY: Readonly<Record<EventVoice, string>> = { byModel: 'model', byRule: 'rule', bySupply: 'gas left' };

/** What the shape of a mark on the dive says: who tells it. The table and the log say it in words. */
export function EventKey({ inMenu = false }: { inMenu?: boolean }) {
  const { scene, watch } = useCourse();
  const units = usePreferences((state) => state.units);
  const voices = useMemo(
    () => new Set(logEntriesOf(scene, watch, units).map(({ voice }) => voice)),
    [scene, watch, units],
  );
  return (
    <span className={inMenu ? styles.eventKeyInMenu : styles.eventKey} aria-hidden="true">
      {(Object.keys(SHORTLY) as EventVoice[])
        .filter((voice) => voices.has(voice))
        .map((voice) => (
          <span key={voice} title={`Told by ${VOICES[voice]}`}>
            <svg viewBox="-10 -10 20 20">
              <EventMark voice={voice} label="" />
            </svg>
            {inMenu ? VOICES[voice] : SHORTLY[voice]}
          </span>
        ))}
    </span>
  );
}

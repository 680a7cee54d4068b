'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import { fetchedLater } from '../parts/fetched-later';
import { useSize } from '../pictures/hand/use-size';
import type { PictureId } from '../pictures/picture-ids';
import { pictures } from '../stage/figures/all';
import { RoomContext, type Room } from '../stage/figures/room';
import styles from './sheet.module.css';

const PictureChooser = fetchedLater(async () => (await import('./keep/keep-and-print')).PictureChooser);

/** Three or four pictures stand two by two where each has this much, in usual letters; else all after the first take turns. */
const TWO_BY_TWO_REM = { width: 68, height: 44 };
const MOST_TWO_BY_TWO = 4;

/** The pictures, all of the room between readings and time. */
export function PictureRoom({ shown }: { shown: readonly PictureId[] }) {
  const { ref, size } = useSize<HTMLDivElement>();
  const [chosen, choose] = useState<PictureId>();
  // Asked when the room is measured, which isn't done on paper: its letters are smaller.
  const rem = useMemo(() => (size ? parseFloat(getComputedStyle(document.documentElement).fontSize) : 16), [size]);
  const roomy =
    size !== undefined && size.width >= TWO_BY_TWO_REM.width * rem && size.height >= TWO_BY_TWO_REM.height * rem;
  const turns = shown.length > 2 && !(roomy && shown.length <= MOST_TWO_BY_TWO) && shown.length <= MOST_TWO_BY_TWO;
  const others = shown.slice(1);
  // A picture that has just been put there is the one to look at.
  const last = others.at(-1);
  const [lastSeen, setLastSeen] = useState(last);
  if (last !== lastSeen) {
    setLastSeen(last);
    choose(last);
  }
  const second = others.find((id) => id === chosen) ?? others[0];
  const inSight = turns ? [shown[0]!, second!] : shown;
  // Whoever put a picture away from its own menu goes on at the next one's.
  const count = useRef(shown.length);
  useEffect(() => {
    if (shown.length < count.current && document.activeElement === document.body)
      ref.current?.querySelector<HTMLElement>('figcaption [aria-label^="Tools of"]')?.focus();
    count.current = shown.length;
  }, [shown, ref]);
  const plain = useMemo((): Room => ({ choose: <PictureChooser /> }), []);

  return (
    <div ref={ref} className={styles.room} data-pictures={inSight.length > MOST_TWO_BY_TWO ? 'many' : inSight.length}>
      <div className={styles.pictures}>
        {shown.length === 0 && <PictureChooser />}
        {inSight.map((id, index) => {
          const { Figure } = pictures[id];
          const room =
            turns && index === 1 ? { ...plain, tabs: <Turns of={others} chosen={id} onChoose={choose} /> } : plain;
          return (
            <RoomContext key={id} value={room}>
              <Figure />
            </RoomContext>
          );
        })}
      </div>
    </div>
  );
}

interface TurnsProps {
  of: readonly PictureId[];
  chosen: PictureId;
  onChoose: (id: PictureId) => void;
}

/** Which of several pictures has the room. */
function Turns({ of, chosen, onChoose }: TurnsProps) {
  return (
    <div className={styles.turns} role="group" aria-label="Pictures that take turns">
      {of.map((id) => (
        <button key={id} type="button" aria-pressed={id === chosen} onClick={() => onChoose(id)}>
          {pictures[id].title}
        </button>
      ))}
    </div>
  );
}

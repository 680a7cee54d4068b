'use client';

import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { useSize } from '../pictures/hand/use-size';
import type { PictureId } from '../pictures/picture-ids';
import { pictures } from './figures/all';
import { RoomContext, type Room } from './figures/room';
import styles from './picture-room.module.css';

/** Three or four pictures stand two by two where each has this much, in usual letters; else all after the first take turns. */
const TWO_BY_TWO_REM = { width: 68, height: 44 };
const MOST_TWO_BY_TWO = 4;
/** Two pictures stand in one room where it has this much of either; in less, as on a phone in a lesson, all take turns. */
const TWO_REM = { width: 46, height: 26 };

interface PictureRoomProps {
  shown: readonly PictureId[];
  /** Chooses what is shown; left out where that is not for whoever looks on. */
  chooser?: ReactNode;
}

/** Pictures that fill the room they are given, together where it is large enough and in turns where it is not. */
export function PictureRoom({ shown, chooser = null }: PictureRoomProps) {
  const { ref, size } = useSize<HTMLDivElement>();
  const [chosen, choose] = useState<PictureId>();
  // Asked when the room is measured, which isn't done on paper: its letters are smaller.
  const rem = useMemo(() => (size ? parseFloat(getComputedStyle(document.documentElement).fontSize) : 16), [size]);
  const has = (width: number, height: number) =>
    size !== undefined && size.width >= width * rem && size.height >= height * rem;
  const roomy = has(TWO_BY_TWO_REM.width, TWO_BY_TWO_REM.height) && shown.length <= MOST_TWO_BY_TWO;
  const cramped = size !== undefined && !has(TWO_REM.width, 0) && !has(0, TWO_REM.height);
  const few = shown.length <= MOST_TWO_BY_TWO;
  const turns = few && shown.length > (cramped ? 1 : 2) && !roomy;
  // Where one picture has all of the room, the first takes turns with the others.
  const fixed = turns && cramped ? 0 : 1;
  const others = shown.slice(fixed);
  // A picture that has just been put there is the one to look at.
  const last = shown.at(-1);
  const [lastSeen, setLastSeen] = useState(last);
  if (last !== lastSeen) {
    setLastSeen(last);
    choose(last);
  }
  const second = others.find((id) => id === chosen) ?? others[0];
  const inSight = useMemo(() => (turns ? [...shown.slice(0, fixed), second!] : shown), [turns, shown, fixed, second]);
  // Whoever put a picture away from its own menu goes on at the next one's or, where none is left, where they are chosen.
  const count = useRef(shown.length);
  const entered = useRef(false);
  useEffect(() => {
    if (shown.length < count.current && entered.current && document.activeElement === document.body)
      ref.current?.querySelector<HTMLElement>('figcaption [aria-label^="Tools of"], summary')?.focus();
    count.current = shown.length;
  }, [shown, ref]);
  const plain = useMemo((): Room => ({ choose: chooser, inSight }), [chooser, inSight]);

  return (
    <div
      ref={ref}
      onFocus={() => (entered.current = true)}
      onBlur={({ relatedTarget }) => (entered.current = relatedTarget === null)}
      className={styles.room}
      data-pictures={inSight.length > MOST_TWO_BY_TWO ? 'many' : inSight.length}
    >
      <div className={styles.pictures}>
        {shown.length === 0 && chooser}
        {inSight.map((id, index) => {
          const { Figure } = pictures[id];
          const room =
            turns && index === fixed ? { ...plain, tabs: <Turns of={others} chosen={id} onChoose={choose} /> } : plain;
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

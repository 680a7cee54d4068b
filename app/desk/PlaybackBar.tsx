'use client';

import { useEffect, useState } from 'react';
import { Button } from '../parts/Button';
import { Choice } from '../parts/Choice';
import { IconButton } from '../parts/IconButton';
import { printClock } from '@/lib/quantity/duration';
import { useDesk, useDeskStore } from './desk-context';
import styles from './desk.module.css';

const SPEEDS = ['1', '10', '30', '60', '120'] as const;
type Speed = (typeof SPEEDS)[number];

const STEP_S = 30;

/** Moves the time cursor: by itself at a chosen speed, in steps, or by hand. */
export function PlaybackBar({ onSteer }: { onSteer: () => void }) {
  const store = useDeskStore();
  const cursorS = useDesk((state) => state.cursorS);
  const endS = useDesk((state) => state.scene.timeline.timeS.at(-1)!);
  const setCursor = useDesk((state) => state.setCursor);
  const [playing, setPlaying] = useState(false);
  const [speed, setSpeed] = useState<Speed>('60');

  useEffect(() => {
    if (!playing) return;
    let frame = 0;
    let before: number | undefined;
    const tick = (now: number) => {
      const { cursorS: at, scene } = store.getState();
      const next = at + ((now - (before ?? now)) / 1000) * Number(speed);
      before = now;
      store.getState().setCursor(next);
      if (next >= scene.timeline.timeS.at(-1)!) setPlaying(false);
      else frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [playing, speed, store]);

  const play = () => {
    if (!playing && cursorS >= endS) setCursor(0);
    setPlaying(!playing);
  };

  return (
    <div className={styles.playback} role="group" aria-label="Time">
      <IconButton icon="stepBack" label={`Back ${STEP_S} seconds`} onClick={() => setCursor(cursorS - STEP_S)} />
      <IconButton icon={playing ? 'pause' : 'play'} label={playing ? 'Pause' : 'Play'} onClick={play} />
      <IconButton icon="stepOn" label={`On ${STEP_S} seconds`} onClick={() => setCursor(cursorS + STEP_S)} />
      <input
        type="range"
        aria-label="Time cursor"
        aria-valuetext={printClock(cursorS)}
        min={0}
        max={Math.round(endS)}
        step={1}
        value={Math.round(cursorS)}
        onChange={(event) => setCursor(Number(event.target.value))}
      />
      <output className={styles.clock}>{printClock(cursorS)}</output>
      <Choice
        label="Speed"
        value={speed}
        onChange={setSpeed}
        options={SPEEDS.map((value) => ({ value, label: `${value}×` }))}
      />
      <Button onClick={onSteer}>Steer by hand</Button>
    </div>
  );
}

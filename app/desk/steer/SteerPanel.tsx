'use client';

import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import { printDepth } from '@/lib/quantity/depth';
import { printClock } from '@/lib/quantity/duration';
import { printRate } from '@/lib/quantity/rate';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { usePreferences } from '../../parts/preferences';
import { useDeskStore } from '../../stage/desk-context';
import { diveOfRun, FRESH_RUN, leverRateMMin, scriptOfRun, steered, type SteerRun } from './steer-run';
import styles from './steer.module.css';

const SPEEDS = ['1', '5', '10', '20', '60'] as const;
type Speed = (typeof SPEEDS)[number];

/** The lever grows this much a second while a key is held, and lies at full after two. */
const KEY_GROWTH_PER_S = 0.5;
/** A frame is at most this long, so that a hidden window doesn't come back to a dive minutes later. */
const LONGEST_FRAME_S = 0.25;

/** Steers a dive by hand in accelerated time; when it ends, the run is a script like any other. */
export function SteerPanel({ onEnd }: { onEnd: () => void }) {
  const store = useDeskStore();
  const units = usePreferences((state) => state.units);
  const [speed, setSpeed] = useState<Speed>('10');
  const [running, setRunning] = useState(false);
  const [shown, setShown] = useState({ run: FRESH_RUN, lever: 0 });
  const run = useRef<SteerRun>(FRESH_RUN);
  const lever = useRef(0);
  const held = useRef<'up' | 'down'>(undefined);

  useEffect(() => {
    if (!running) return;
    let frame = 0;
    let before: number | undefined;
    const { settings } = store.getState().scene.dive;
    const tick = (now: number) => {
      const seconds = Math.min((now - (before ?? now)) / 1000, LONGEST_FRAME_S);
      before = now;
      if (held.current) {
        const towards = held.current === 'up' ? -1 : 1;
        const grown = lever.current * towards > 0 ? lever.current : 0;
        lever.current = Math.min(Math.max(grown + towards * KEY_GROWTH_PER_S * seconds, -1), 1);
      }
      if (seconds > 0) {
        run.current = steered(run.current, lever.current, seconds * Number(speed));
        store.getState().showLive(diveOfRun(settings, run.current));
        setShown({ run: run.current, lever: lever.current });
      }
      frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [running, speed, store]);

  const end = () => {
    setRunning(false);
    const { base, change, dropLive } = store.getState();
    if (base) change({ script: scriptOfRun(base, run.current) });
    else dropLive();
    onEnd();
  };
  const release = () => {
    held.current = undefined;
    lever.current = 0;
  };
  const hold = (event: KeyboardEvent) => {
    const way = { ArrowUp: 'up', ArrowDown: 'down' } as const;
    const key = way[event.key as keyof typeof way];
    if (!key) return;
    event.preventDefault();
    setRunning(true);
    held.current = key;
  };
  const pull = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointermove' && event.buttons !== 1) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const box = event.currentTarget.getBoundingClientRect();
    setRunning(true);
    lever.current = Math.min(Math.max(((event.clientY - box.top) / box.height) * 2 - 1, -1), 1);
  };

  const depthM = shown.run.depthsM.at(-1)!;
  const rate = leverRateMMin(shown.lever);
  return (
    <section className={styles.steer} aria-label="Steer by hand">
      <div
        className={styles.lever}
        role="slider"
        tabIndex={0}
        aria-label="Lever: up ascends, down descends; hold an arrow key"
        aria-orientation="vertical"
        aria-valuemin={-100}
        aria-valuemax={100}
        aria-valuenow={Math.round(shown.lever * 100)}
        aria-valuetext={rateText(rate, units)}
        onKeyDown={hold}
        onKeyUp={release}
        onBlur={release}
        onPointerDown={pull}
        onPointerMove={pull}
        onPointerUp={release}
        onPointerCancel={release}
      >
        <span>ascend</span>
        <span className={styles.knob} style={{ insetBlockStart: `${(shown.lever + 1) * 50}%` }} />
        <span>descend</span>
      </div>
      <div className={styles.told}>
        <p className={styles.figures}>
          <output>{printDepth(depthM, units)}</output>
          <output>{printClock(shown.run.timesS.at(-1)!)}</output>
          <output>{rateText(rate, units)}</output>
        </p>
        <p>
          Hold the lever, or the up and down arrow keys; the further it is pulled, the faster you go. Let go to stay
          where you are.
        </p>
        <div className={styles.buttons}>
          <Choice
            label="Speed of time"
            value={speed}
            onChange={setSpeed}
            options={SPEEDS.map((value) => ({ value, label: `${value}×` }))}
          />
          <Button kind="primary" icon={running ? 'pause' : 'play'} onClick={() => setRunning(!running)}>
            {running ? 'Pause' : 'Run'}
          </Button>
          <Button onClick={end}>End and keep as a script</Button>
          <Button
            kind="quiet"
            onClick={() => {
              setRunning(false);
              store.getState().dropLive();
              onEnd();
            }}
          >
            Throw away
          </Button>
        </div>
      </div>
    </section>
  );
}

function rateText(rateMMin: number, units: Parameters<typeof printRate>[1]): string {
  if (Math.abs(rateMMin) < 0.05) return 'holding depth';
  return `${rateMMin < 0 ? 'up' : 'down'} at ${printRate(Math.abs(rateMMin), units)}`;
}

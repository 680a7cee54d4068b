'use client';

import { useEffect, useId, useMemo, useState } from 'react';
import { printDayClock } from '@/lib/dive/day-clock';
import type { LessonScript } from '@/lib/lesson/lesson';
import { runSpeed } from '@/lib/lesson/run-speed';
import { momentReached } from '@/lib/lesson/questions/moment-reached';
import { Button } from '../../../parts/Button';
import { Choice } from '../../../parts/Choice';
import { IconButton } from '../../../parts/IconButton';
import { Menu } from '../../../parts/Menu';
import { usePreferences } from '../../../parts/preferences';
import { ASK_KEY } from '../../../stage/announcing/ask-key';
import { WhereInWords } from '../../../stage/announcing/WhereInWords';
import { useDesk, useDeskStore } from '../../../stage/desk-context';
import { HoldAtEvents } from '../../../stage/HoldAtEvents';
import { HoldChoice, SPEED_OPTIONS, STEP_S } from '../../../stage/PlaybackBar';
import { ReadingsPanel } from '../../../stage/ReadingsPanel';
import { READING_IDS, type ReadingId } from '../../../stage/reading-ids';
import type { RunStep } from '../../prepared';
import { ProseLine } from '../../../parts/prose/Prose';
import { Stage } from './Stage';
import styles from './stage.module.css';
import places from '../window.module.css';

const NEAR_S = 0.5;

/** A dive that plays and waits where there is something to look at. */
export function RunStage({ script, step }: { script: LessonScript; step: RunStep }) {
  const read = useMemo(() => READING_IDS.filter((id) => step.readings?.includes(id) ?? true), [step.readings]);
  return (
    <Stage
      script={script}
      show={step.show}
      atS={step.fromS}
      untilS={step.untilS}
      speed={`${runSpeed(step.toS - step.fromS)}`}
      reads={read}
    >
      <RunBar step={step} unread={READING_IDS.filter((id) => !read.includes(id))} />
      <div className={places.figures} tabIndex={0}>
        <ReadingsPanel strip only={read} />
      </div>
    </Stage>
  );
}

function RunBar({ step: { fromS, toS, watch, show }, unread }: { step: RunStep; unread: readonly ReadingId[] }) {
  const store = useDeskStore();
  const cursorS = useDesk((state) => state.cursorS);
  const playing = useDesk((state) => state.playing);
  const speed = useDesk((state) => state.speed);
  const { play, pause, setCursor, setSpeed } = store.getState();
  const [waitingAt, setWaitingAt] = useState<number>();
  const timeline = useDesk(({ scene }) => scene.timeline);
  const hintId = useId();
  const [where, setWhere] = useState<string>();
  const holds = usePreferences((state) => state.holds.desk);
  // Where neither the marks of the dive nor all readings tell what happens, waiting there would.
  const tells = unread.length === 0 || show.includes('profile');

  // The run waits at each moment to watch, and ends where the step says.
  useEffect(
    () => store.getState().waitAt((afterS, reachedS) => watch[momentReached(watch, afterS, reachedS)]?.atS),
    [store, watch],
  );
  useEffect(
    () =>
      store.subscribe((now, before) => {
        if (!before.playing || now.cursorS <= before.cursorS) return;
        const reached = watch.findIndex(({ atS }) => atS === now.heldAtS);
        if (reached >= 0) setWaitingAt(reached);
        if (!now.playing || now.cursorS < toS) return;
        now.pause();
        now.setCursor(toS);
      }),
    [store, watch, toS],
  );

  const goTo = (timeS: number) => {
    pause();
    const within = Math.min(Math.max(fromS, timeS), toS);
    setCursor(within);
    const last = watch.findLastIndex(({ atS }) => atS <= within + NEAR_S);
    setWaitingAt(last < 0 ? undefined : last);
  };
  const start = () => {
    if (cursorS >= toS - NEAR_S) {
      setCursor(fromS);
      setWaitingAt(undefined);
    }
    play();
  };
  const told = waitingAt === undefined ? undefined : watch[waitingAt];
  const next = watch.find(({ atS }) => atS > cursorS + NEAR_S);

  return (
    <>
      <div className={`${places.note} ${styles.watch} unprinted`} role="status" tabIndex={0}>
        {told ? (
          <p>
            <b>{printDayClock(timeline, told.atS)}</b> <ProseLine html={told.html} />
          </p>
        ) : (
          <p>
            {watch.length > 0
              ? `Play the dive. It waits at ${watch.length === 1 ? 'a moment' : `${watch.length} moments`} worth a look.`
              : 'Play the dive, or move through it by hand.'}
          </p>
        )}
      </div>
      <div className={`${places.bar} ${styles.bar} unprinted`} role="group" aria-label="Time">
        <IconButton icon="stepBack" label={`Back ${STEP_S} seconds`} onClick={() => goTo(cursorS - STEP_S)} />
        <Button kind="primary" icon={playing ? 'pause' : 'play'} onClick={playing ? pause : start}>
          <span className={styles.word}>
            {playing ? 'Pause' : cursorS > fromS + NEAR_S && cursorS < toS - NEAR_S ? 'Go on playing' : 'Play'}
          </span>
        </Button>
        <IconButton icon="stepOn" label={`On ${STEP_S} seconds`} onClick={() => goTo(cursorS + STEP_S)} />
        <input
          type="range"
          aria-label="Time cursor"
          aria-valuetext={where}
          aria-describedby={hintId}
          min={Math.round(fromS)}
          max={Math.round(toS)}
          step={1}
          value={Math.round(cursorS)}
          onChange={(event) => goTo(Number(event.target.value))}
        />
        <span className={styles.clock}>{printDayClock(timeline, cursorS)}</span>
        <WhereInWords tell={setWhere} unread={unread} />
        {tells && holds && <HoldAtEvents />}
        <span id={hintId} hidden>
          {ASK_KEY} says where the diver is.
        </span>
        {watch.length > 0 && (
          <IconButton icon="eventOn" label="Next moment" disabled={!next} onClick={() => next && goTo(next.atS)} />
        )}
        <Menu icon="more" label="Speed and moments">
          <Choice label="Speed" value={speed} onChange={setSpeed} options={SPEED_OPTIONS} />
          {tells && <HoldChoice />}
          {watch.length > 0 && (
            <ol className={styles.moments} aria-label="Moments to watch">
              {watch.map(({ atS }, index) => (
                <li key={index}>
                  <Button
                    kind="quiet"
                    data-done=""
                    aria-current={index === waitingAt ? 'true' : undefined}
                    onClick={() => goTo(atS)}
                  >
                    {printDayClock(timeline, atS)}
                  </Button>
                </li>
              ))}
            </ol>
          )}
        </Menu>
      </div>
    </>
  );
}

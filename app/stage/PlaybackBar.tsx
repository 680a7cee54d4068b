'use client';

import { useEffect, useId, useState } from 'react';
import { Button } from '../parts/Button';
import { Choice } from '../parts/Choice';
import { fetchedLater } from '../parts/fetched-later';
import { IconButton } from '../parts/IconButton';
import { Menu } from '../parts/Menu';
import { usePreferences } from '../parts/preferences';
import { printDayClock } from '@/lib/dive/day-clock';
import { ASK_KEY } from './announcing/ask-key';
import type { Listening } from './announcing/announcing';
import { Voice } from './announcing/Voice';
import { useDesk, useDeskStore } from './desk-context';
import { PLAYBACK_SPEEDS } from './desk-state';
import { longestGoneS } from './jump';
import styles from './stage.module.css';

/** So far a button goes back or on, s. */
export const STEP_S = 30;
/** The speeds to choose from, here and beside a lesson's run. */
export const SPEED_OPTIONS = PLAYBACK_SPEEDS.map((value) => ({ value, label: `${value}×` }));

// What a unit tells comes with its rules, after the desk has opened. The buttons keep their places.
const EventSteps = fetchedLater(
  async () => (await import('./after-opening')).EventSteps,
  <>
    <IconButton icon="eventBack" label="To the event before" disabled />
    <IconButton icon="eventOn" label="To the next event" disabled />
  </>,
);

const WhereInWords = fetchedLater(async () => (await import('./after-opening')).WhereInWords);
const HoldAtEvents = fetchedLater(async () => (await import('./after-opening')).HoldAtEvents);

/** Has playing wait at each event, or not; remembered for every place where a dive plays but before a class. */
export function HoldChoice() {
  const holds = usePreferences((state) => state.holds.desk);
  const setHolds = usePreferences((state) => state.setHolds);
  return (
    <IconButton
      icon="hold"
      label="Hold when something happens"
      pressed={holds}
      onClick={() => setHolds('desk', !holds)}
    />
  );
}

/** Moves the time cursor: by itself at a chosen speed, in steps, or by hand. The desk, which can be steered, tells itself where it holds. */
export function PlaybackBar({ onSteer }: { onSteer?: () => void }) {
  const cursorS = useDesk((state) => state.cursorS);
  const endS = useDesk((state) => state.scene.timeline.timeS.at(-1)!);
  const legs = useDesk((state) => state.scene.timeline.legs);
  const hintId = useId();
  const [where, setWhere] = useState<string>();
  const setCursor = useDesk((state) => state.setCursor);
  const clock = printDayClock({ legs }, cursorS);
  const playing = useDesk((state) => state.playing);
  const play = useDesk((state) => state.play);
  const pause = useDesk((state) => state.pause);
  const speed = useDesk((state) => state.speed);
  const setSpeed = useDesk((state) => state.setSpeed);
  const holds = usePreferences((state) => state.holds.desk);

  const further = (
    <>
      <Choice label="Speed" labelSpokenOnly value={speed} onChange={setSpeed} options={SPEED_OPTIONS} />
      <HoldChoice />
      {onSteer && (
        <Button data-done="" onClick={() => onSteer()}>
          Steer by hand
        </Button>
      )}
    </>
  );
  return (
    <div className={styles.playback} role="group" aria-label="Time" data-tour="time">
      <IconButton icon="stepBack" label={`Back ${STEP_S} seconds`} onClick={() => setCursor(cursorS - STEP_S)} />
      <IconButton
        data-way="play"
        icon={playing ? 'pause' : 'play'}
        label={playing ? 'Pause' : 'Play'}
        onClick={playing ? pause : play}
      />
      <IconButton icon="stepOn" label={`On ${STEP_S} seconds`} onClick={() => setCursor(cursorS + STEP_S)} />
      <EventSteps />
      <input
        type="range"
        aria-label="Time cursor"
        aria-valuetext={where ?? clock}
        aria-describedby={hintId}
        min={0}
        max={Math.round(endS)}
        step={1}
        value={Math.round(cursorS)}
        onChange={(event) => setCursor(Number(event.target.value))}
      />
      <span id={hintId} hidden>
        {ASK_KEY} says where the diver is.
      </span>
      <WhereInWords tell={setWhere} />
      {!onSteer && holds && <HoldAtEvents />}
      <span className={`${styles.clock} ${legs.at(-1)!.diveNumber > 0 ? styles.ofDives : ''}`}>{clock}</span>
      <span className={styles.inBar}>{further}</span>
      <span className={styles.folded}>
        <Menu icon="more" label="Speed and steering">
          {further}
        </Menu>
      </span>
    </div>
  );
}

/**
 * Moves the time cursor while the dive plays, and tells what happens to whoever listens. It draws nothing, so that the dive
 * plays on where the bar is not on show.
 */
export function Playback(listening: Listening) {
  const store = useDeskStore();
  const playing = useDesk((state) => state.playing);
  const speed = useDesk((state) => state.speed);
  useEffect(() => {
    if (!playing) return;
    let frame = 0;
    let before: number | undefined;
    let leftAtS = store.getState().cursorS;
    const tick = (now: number) => {
      const { cursorS, scene, setCursor, pause } = store.getState();
      // The press that plays, and a jump since the last frame, are this frame's step: two in one would take twice as long
      // to show.
      const stands = before === undefined || cursorS !== leftAtS;
      // However long a slow machine took for the last frame, what happens in between is not passed over.
      const wayS = Math.min(((now - (before ?? now)) / 1000) * Number(speed), 0.9 * longestGoneS({ speed }));
      const next = stands ? cursorS : cursorS + wayS;
      before = now;
      if (!stands) setCursor(next);
      leftAtS = store.getState().cursorS;
      // Whoever watches the cursor may have stopped it.
      if (!store.getState().playing) return;
      if (next >= scene.timeline.timeS.at(-1)!) pause();
      else frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [playing, speed, store]);
  return <Voice {...listening} />;
}

'use client';

import { useRef, useState } from 'react';
import { printClock } from '@/lib/quantity/duration';
import { runEndS } from '@/lib/steer/run';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { IconButton } from '../../parts/IconButton';
import { Menu } from '../../parts/Menu';
import { useStatus } from '../../parts/status';
import { useDesk, useDeskStore } from '../../stage/desk-context';
import { KeepRunDialog } from './KeepRunDialog';
import { STEERING_SPEEDS, steeringOf, useSteering } from './steering';
import bar from '../../stage/stage.module.css';
import { STEP_S } from '../../stage/PlaybackBar';

const SPEEDS = STEERING_SPEEDS.map((value) => ({ value, label: `${value}×` }));

function focusLever() {
  document.querySelector<HTMLElement>('[data-lever]')?.focus({ preventScroll: true });
}

/** Time while a dive is steered: on, still, or back to any moment of the run to steer on from there; and what becomes of it. */
export function SteerBar() {
  const desk = useDeskStore();
  const steering = steeringOf(desk);
  const running = useSteering((state) => state.running);
  const speed = useSteering((state) => state.speed);
  const cursorS = useDesk((state) => state.cursorS);
  const endS = useDesk((state) => (state.run ? runEndS(state.run) : 0));
  const cutOffS = useDesk((state) => (state.cutOff ? runEndS(state.cutOff) : 0));
  const [keeping, keep] = useState(false);
  const byHand = useRef(false);
  const goTo = (timeS: number) => {
    steering.getState().wait();
    desk.getState().setCursor(timeS);
  };
  const throwAway = () => {
    const { run, endRun, startRun } = desk.getState();
    endRun();
    if (run && runEndS(run) > 0)
      useStatus.getState().say(`${printClock(runEndS(run))} of steering thrown away.`, {
        label: 'Take it up again',
        run: () => startRun(run),
      });
  };
  const further = (
    <>
      <span onPointerDown={() => (byHand.current = true)} onKeyDown={() => (byHand.current = false)}>
        <Choice
          label="Speed of time"
          labelSpokenOnly
          value={speed}
          onChange={(next) => {
            steering.getState().setSpeed(next);
            // Chosen with the mouse: the arrow keys belong to the lever again.
            if (byHand.current) focusLever();
          }}
          options={SPEEDS}
        />
      </span>
      {cutOffS > 0 && (
        <Button
          data-done=""
          onClick={() => {
            steering.getState().wait();
            desk.getState().putBackRun();
          }}
        >
          Put back to {printClock(cutOffS)}
        </Button>
      )}
      <Button kind="quiet" data-done="" onClick={throwAway}>
        Throw away
      </Button>
    </>
  );
  return (
    <div className={bar.playback} role="group" aria-label="Steering">
      <IconButton icon="stepBack" label={`Back ${STEP_S} seconds`} onClick={() => goTo(cursorS - STEP_S)} />
      <IconButton
        icon={running ? 'pause' : 'play'}
        label={running ? 'Pause' : cursorS < endS - 1 ? 'Steer on from here' : 'Run'}
        onClick={running ? steering.getState().wait : steering.getState().goOn}
      />
      <input
        type="range"
        aria-label="Moment of the run"
        aria-valuetext={printClock(cursorS)}
        min={0}
        max={Math.max(1, Math.round(endS))}
        step={1}
        value={Math.round(cursorS)}
        onChange={(event) => goTo(Number(event.target.value))}
      />
      <span className={bar.clock}>{printClock(cursorS)}</span>
      <span className={bar.inBar}>{further}</span>
      <Button
        kind="primary"
        disabled={endS < 1}
        onClick={() => {
          steering.getState().wait();
          steering.getState().letGo();
          keep(true);
        }}
      >
        Keep
      </Button>
      <span className={bar.folded}>
        <Menu icon="more" label="Speed, and throwing away">
          {further}
        </Menu>
      </span>
      {keeping && <KeepRunDialog onClose={() => keep(false)} />}
    </div>
  );
}

'use client';

import { useEffect, useId, useRef, type CSSProperties, type PointerEvent } from 'react';
import { sayDepth } from '@/lib/quantity/depth';
import { atMost } from '@/lib/quantity/number';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { runEndS } from '@/lib/steer/run';
import { IconButton } from '../../parts/IconButton';
import { usePreferences } from '../../parts/preferences';
import { depthTicks } from '../../pictures/profile/profile-scales';
import { useDesk, useDeskStore } from '../../stage/desk-context';
import { ASK_KEY } from '../../stage/announcing/ask-key';
import { cursorSample } from '../../stage/desk-store';
import { leverPlace, notchAt, notchesMMin, sayRate } from './lever';
import { OneSwitch } from './OneSwitch';
import { steeringOf, useSteering } from './steering';
import { useSteeringKeys } from './use-steering-keys';
import styles from './steer.module.css';

/** Moved less than this, a press is a tap, px. */
const TAP_PX = 6;

/** A lever for the hand, a scale of depth beside it, and what a tap or a single switch can do. It stands beside the pictures. */
export function SteerLever() {
  const desk = useDeskStore();
  const steering = steeringOf(desk);
  const units = usePreferences((state) => state.units);
  const rateMMin = useSteering((state) => state.rateMMin);
  const running = useSteering((state) => state.running);
  const lever = useRef<HTMLDivElement>(null);
  const hintId = useId();
  const press = useRef<{ atMs: number; atPx: number; beforeMMin: number }>(undefined);
  useSteeringKeys(steering);

  useEffect(() => {
    const { run } = desk.getState();
    // One that is found again after a reload waits until it is taken hold of.
    if (run && runEndS(run) === 0) lever.current?.focus({ preventScroll: true });
    return () => {
      steering.getState().wait();
      steering.getState().letGo();
    };
  }, [desk, steering]);

  useEffect(() => {
    if (!running) return undefined;
    let frame = 0;
    let before: number | undefined;
    const tick = (now: number) => {
      steering.getState().tick((now - (before ?? now)) / 1000);
      before = now;
      frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [running, steering]);

  const placeOf = ({ currentTarget, clientY }: PointerEvent<HTMLDivElement>) => {
    const box = currentTarget.getBoundingClientRect();
    return ((clientY - box.top) / box.height) * 2 - 1;
  };
  const { way, speed } = sayRate(rateMMin, units);
  return (
    <section className={styles.column} aria-label="Steer by hand" data-part="lever">
      <span id={hintId} className="spoken">
        Hold an arrow key, or tap it for a speed that stays; 0 is level, Space pauses, {ASK_KEY} says where the diver
        is.
      </span>
      <p className={styles.rate} data-way={way}>
        <b>{way}</b>
        <span>{speed}</span>
      </p>
      <div className={styles.hand}>
        <DepthScale />
        <div className={styles.track}>
          <IconButton icon="up" label="A step upward" onClick={() => steering.getState().notch(-1)} />
          <div
            ref={lever}
            data-lever=""
            className={styles.lever}
            role="slider"
            tabIndex={0}
            aria-label="Lever: up ascends, down descends"
            aria-describedby={hintId}
            aria-orientation="vertical"
            aria-valuemin={-100}
            aria-valuemax={100}
            aria-valuenow={Math.round(leverPlace(rateMMin) * 100)}
            aria-valuetext={way === 'level' ? way : `${way} at ${speed}`}
            onPointerDown={(event) => {
              if (event.button !== 0) return;
              event.currentTarget.setPointerCapture(event.pointerId);
              press.current = { atMs: event.timeStamp, atPx: event.clientY, beforeMMin: rateMMin };
              steering.getState().pull(placeOf(event));
            }}
            onPointerMove={(event) => press.current && steering.getState().pull(placeOf(event))}
            onPointerUp={(event) => {
              const { atMs, atPx } = press.current ?? { atMs: 0, atPx: 0 };
              if (!press.current) return;
              press.current = undefined;
              const tap = steering.getState().isTap(atMs, event.timeStamp) && Math.abs(event.clientY - atPx) < TAP_PX;
              if (tap) steering.getState().set(notchAt(placeOf(event), units));
              else steering.getState().letGo();
            }}
            onPointerCancel={() => {
              press.current = undefined;
              steering.getState().letGo();
            }}
          >
            {notchesMMin(units).map((notch) => (
              <span
                key={notch}
                className={styles.notch}
                style={{ insetBlockStart: `${(leverPlace(notch) + 1) * 50}%` }}
              >
                {notch === 0 ? 'level' : atMost(Math.abs(notch) / (units === 'metric' ? 1 : METRES_PER_FOOT), 0)}
              </span>
            ))}
            <span className={styles.fastUp}>
              up<span className={styles.ofScale}>, {units === 'metric' ? 'm/min' : 'ft/min'}</span>
            </span>
            <span className={styles.fastDown}>down</span>
            <span className={styles.knob} style={{ insetBlockStart: `${(leverPlace(rateMMin) + 1) * 50}%` }} />
          </div>
          <IconButton icon="down" label="A step downward" onClick={() => steering.getState().notch(1)} />
        </div>
      </div>
      <OneSwitch />
    </section>
  );
}

/** Depths the scale reaches to, m: it grows in steps, so that it stands still under the hand. */
const REACHES_M = [20, 30, 45, 60, 100];

/** The scale of depth beside the lever: where the diver is, and the roof that may not be passed. */
function DepthScale() {
  const units = usePreferences((state) => state.units);
  const depthM = useDesk((state) => state.scene.timeline.depthM[cursorSample(state)]!);
  const ceilingM = useDesk((state) =>
    state.covered.includes('ceiling') ? 0 : state.scene.figures.ceilingM[cursorSample(state)]!,
  );
  const deepestM = useDesk((state) => state.scene.timeline.legs.reduce((most, { toM }) => Math.max(most, toM), 0));
  const toM = REACHES_M.find((reach) => deepestM <= reach * 0.9) ?? REACHES_M.at(-1)!;
  const at = (depth: number): CSSProperties => ({ insetBlockStart: `${(depth / toM) * 100}%` });
  return (
    <div className={styles.scale} aria-hidden="true">
      <span className={styles.scaleName}>depth</span>
      {depthTicks(toM, units, 6)
        .filter((depth) => depth <= toM)
        .map((depth) => (
          <span key={depth} className={styles.tick} style={at(depth)}>
            {sayDepth(depth, units)}
          </span>
        ))}
      {ceilingM > 0 && <span className={styles.ceiling} style={{ blockSize: `${(ceilingM / toM) * 100}%` }}></span>}
      <span className={styles.diver} style={at(depthM)} />
    </div>
  );
}

'use client';

import { useRef, type KeyboardEvent, type PointerEvent } from 'react';
import type { Leg } from '@/lib/dive/legs';
import { sayDepth } from '@/lib/quantity/depth';
import { writeTime } from '@/lib/quantity/duration';
import { printDayClock } from '@/lib/dive/day-clock';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { useDesk, useDeskOncePainted, useDeskStore } from '../desk-context';
import {
  addPoint,
  isLevel,
  moveLegDepth,
  moveLegEnd,
  newPointS,
  pullLegEnd,
  removeLeg,
  snapped,
  type Notch,
} from './profile-edits';
import { pointerIn, type ProfileScales } from '../../pictures/profile/profile-scales';
import type { PictureProps } from '../../pictures/picture-props';
import styles from '../../pictures/pictures.module.css';

interface ProfileHandlesProps {
  scales: ProfileScales;
  units: PictureProps['units'];
  /** Holds the scales still from the first movement of a drag to its end. */
  onHold: (scales: ProfileScales | undefined) => void;
}

type Axis = 'depth' | 'time';

/** Past this many pixels a drag is known to go up and down, or along. */
const DECIDED_PX = 4;

/** The page keys move a point by so many steps of an arrow key. */
const PAGE = 5;

/**
 * Points and legs that can be moved by hand or by keys. A drag goes either up and down (the depth) or along (the time
 * the leg takes, and so its rate), whichever it sets out as; the script is changed, and the picture follows it. On a
 * touch screen points take hold of the gesture; lines leave what goes up and down to the page, to scroll with.
 */
export function ProfileHandles({ scales, units, onHold }: ProfileHandlesProps) {
  const store = useDeskStore();
  const legs = useDeskOncePainted((state) => state.scene.timeline.legs, true);
  const selected = useDesk((state) => state.selectedStep);
  const select = useDesk((state) => state.select);
  const drag = useRef<{
    leg: number;
    part: 'point' | 'line';
    fromX: number;
    fromY: number;
    axis?: Axis;
    name: string;
    script: string;
    legs: readonly Leg[];
  }>(null);
  const notch: Notch = { depthM: units === 'metric' ? 1 : METRES_PER_FOOT * 5, timeS: 60 };
  const fine: Notch = { depthM: units === 'metric' ? 0.1 : METRES_PER_FOOT, timeS: 5 };

  const begin = (event: PointerEvent<SVGElement>, index: number, part: 'point' | 'line') => {
    if (event.button !== 0) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    const { x, y } = pointerIn(event.currentTarget.ownerSVGElement!, event);
    const { script, scene } = store.getState();
    drag.current = {
      leg: index,
      part,
      fromX: x,
      fromY: y,
      name: `drag ${event.timeStamp}`,
      script,
      legs: scene.timeline.legs,
    };
    select(legs[index]!.step);
    onHold(scales);
  };

  const move = (event: PointerEvent<SVGElement>) => {
    const held = drag.current;
    if (!held) return;
    const at = pointerIn(event.currentTarget.ownerSVGElement!, event);
    const [dx, dy] = [at.x - held.fromX, at.y - held.fromY];
    if (!held.axis) {
      if (Math.hypot(dx, dy) < DECIDED_PX) return;
      held.axis = Math.abs(dy) > Math.abs(dx) ? 'depth' : 'time';
    }
    const leg = held.legs[held.leg]!;
    const step = event.altKey ? fine : notch;
    const depthM = () => snapped(scales.y.invert(scales.y(leg.toM) + dy), step.depthM);
    const endS = () =>
      snapped(scales.x.invert(scales.x(leg.endS) + dx) - leg.startS, step.timeS / (isLevel(leg) ? 1 : 12)) + leg.startS;
    const next =
      held.axis === 'time'
        ? moveLegEnd(held.script, leg, endS())
        : held.part === 'line'
          ? moveLegDepth(held.script, leg, depthM())
          : pullLegEnd(held.script, leg, depthM());
    store.getState().change({ script: next }, held.name);
  };

  const end = () => {
    drag.current = null;
    store.getState().settle();
    onHold(undefined);
  };

  /** The page has taken the gesture, to scroll with it: the dive is as it was. */
  const giveUp = () => {
    const held = drag.current;
    if (held && store.getState().script !== held.script) store.getState().undo();
    end();
  };

  const press = (event: KeyboardEvent<SVGGElement>, leg: Leg) => {
    const step = event.shiftKey ? fine : notch;
    const stepS = step.timeS / (isLevel(leg) ? 1 : 6);
    const { script, change, cursorS } = store.getState();
    const toPoint = (which: 0 | -1) => () => {
      const points = event.currentTarget.parentElement!.querySelectorAll<SVGGElement>('[role="slider"]');
      Array.from(points).at(which)?.focus();
    };
    const nudge = (next: string) => change({ script: next }, `nudge ${leg.step}`);
    const doings: Record<string, () => void> = {
      ArrowUp: () => nudge(pullLegEnd(script, leg, leg.toM - step.depthM)),
      ArrowDown: () => nudge(pullLegEnd(script, leg, leg.toM + step.depthM)),
      ArrowLeft: () => nudge(moveLegEnd(script, leg, leg.endS - stepS)),
      ArrowRight: () => nudge(moveLegEnd(script, leg, leg.endS + stepS)),
      PageUp: () => nudge(pullLegEnd(script, leg, leg.toM - PAGE * step.depthM)),
      PageDown: () => nudge(pullLegEnd(script, leg, leg.toM + PAGE * step.depthM)),
      Home: toPoint(0),
      End: toPoint(-1),
      Delete: () => change({ script: removeLeg(script, leg) }),
      Backspace: () => change({ script: removeLeg(script, leg) }),
      Insert: () => change({ script: addPoint(script, leg, newPointS(leg, cursorS)) }),
    };
    const doing = doings[event.key === '+' ? 'Insert' : event.key];
    if (!doing || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    doing();
  };

  return (
    <g clipPath="url(#dive-frame)">
      {legs.map((leg, index) => {
        if (leg.interval) return null;
        const line = `M${scales.x(leg.startS).toFixed(1)},${scales.y(leg.fromM).toFixed(1)}L${scales.x(leg.endS).toFixed(1)},${scales.y(leg.toM).toFixed(1)}`;
        return (
          <path
            key={`line ${leg.step}`}
            d={line}
            aria-hidden="true"
            className={`${styles.legHit} ${isLevel(leg) ? styles.upDown : styles.along}`}
            onPointerDown={(event) => begin(event, index, 'line')}
            onPointerMove={move}
            onPointerUp={end}
            onPointerCancel={giveUp}
            onDoubleClick={(event) => {
              const { x } = pointerIn(event.currentTarget.ownerSVGElement!, event);
              const { script, change } = store.getState();
              change({ script: addPoint(script, leg, scales.x.invert(x)) });
              select(leg.step);
            }}
          />
        );
      })}
      {legs.map((leg, index) => {
        if (leg.interval) return null;
        return (
          <g
            key={`point ${leg.step}`}
            role="slider"
            tabIndex={0}
            aria-label={`Point ${index + 1}`}
            aria-orientation="vertical"
            aria-valuemin={0}
            aria-valuemax={350}
            aria-valuenow={Math.round(leg.toM * 10) / 10}
            aria-valuetext={`${sayDepth(leg.toM, units)} at ${printDayClock({ legs }, leg.endS)}, after ${writeTime(Math.round(leg.endS - leg.startS) || 1)}`}
            transform={`translate(${scales.x(leg.endS).toFixed(1)},${scales.y(leg.toM).toFixed(1)})`}
            className={leg.step === selected ? styles.handleChosen : styles.handle}
            onFocus={() => select(leg.step)}
            onKeyDown={(event) => press(event, leg)}
            onPointerDown={(event) => begin(event, index, 'point')}
            onPointerMove={move}
            onPointerUp={end}
            onPointerCancel={giveUp}
          >
            <circle r={14} className={styles.hit} />
            <rect x={-5} y={-5} width={10} height={10} rx={1.5} />
          </g>
        );
      })}
    </g>
  );
}

'use client';

import { useMemo, useRef, type ReactNode } from 'react';
import { plannedAt } from '@/lib/ascent/ascent-start';
import type { AscentPart } from '@/lib/ascent/schedule';
import { printStopDepth } from '@/lib/quantity/depth';
import type { OverlaidDive } from './overlaid-dive';
import { OverlayPath } from './OverlayPath';
import type { PictureProps } from '../picture-props';
import { ProfileGround } from './ProfileGround';
import { PROFILE_MARGIN, pointerIn, profileScales, type ProfileScales } from './profile-scales';
import { Rock } from '../axes/Rock';
import styles from '../pictures.module.css';

interface ProfilePictureProps extends PictureProps {
  /** Scales held still, while a point is dragged. */
  held?: ProfileScales | undefined;
  /** A second dive, drawn under the first. */
  overlay?: OverlaidDive | undefined;
  /** Ways out of a stop, drawn likewise. */
  ways?: readonly OverlaidDive[] | undefined;
  /** What lies on top: points to drag, marks of events. */
  children?: ((scales: ProfileScales) => ReactNode) | undefined;
}

const NONE: readonly OverlaidDive[] = [];

/** The dive's depth over time, under its ceiling: a roof of rock the diver may not pass. */
export function ProfilePicture({
  scene,
  sample,
  cursorS,
  width,
  height,
  units,
  onCursor,
  view,
  held,
  overlay,
  ways = NONE,
  children,
}: ProfilePictureProps) {
  const svg = useRef<SVGSVGElement>(null);
  const deepestOtherM = [...(overlay ? [overlay] : []), ...ways]
    .flatMap(({ timeline }) => timeline.legs)
    .reduce((deepest, leg) => Math.max(deepest, leg.toM), 0);
  const scales = useMemo(
    () => held ?? profileScales(scene.timeline, width, height, view, deepestOtherM),
    [held, scene, width, height, view, deepestOtherM],
  );
  const { inner, x, y } = scales;
  const point = (event: React.PointerEvent) => onCursor(x.invert(pointerIn(svg.current!, event).x));

  return (
    <svg
      ref={svg}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      className={styles.picture}
      role="group"
      aria-label="The dive, point by point"
    >
      <defs>
        <Rock id="rock" />
        <clipPath id="dive-frame">
          <rect
            x={-2}
            y={-PROFILE_MARGIN.top}
            width={inner.width + 2 + PROFILE_MARGIN.right}
            height={inner.height + PROFILE_MARGIN.top + 6}
          />
        </clipPath>
      </defs>
      <g transform={`translate(${PROFILE_MARGIN.left},${PROFILE_MARGIN.top})`}>
        <rect
          width={inner.width}
          height={inner.height}
          className={styles.hit}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            point(event);
          }}
          onPointerMove={(event) => event.buttons === 1 && point(event)}
        />
        <g aria-hidden="true">
          <g className={styles.passive}>
            {overlay && <OverlayPath dive={overlay} scales={scales} />}
            {ways.map((way, index) => (
              <OverlayPath key={index} dive={way} scales={scales} second={index > 0} />
            ))}
            <ProfileGround scene={scene} scales={scales} units={units} />
            <WayUp scene={scene} sample={sample} scales={scales} units={units} />
          </g>
          <g transform={`translate(${x(cursorS)},0)`} className={styles.cursor}>
            <line y1={-6} y2={inner.height} />
            <circle cy={y(scene.timeline.depthM[sample]!)} r={6} />
          </g>
        </g>
        {children?.(scales)}
      </g>
    </svg>
  );
}

/** What the words of a stop need beside it; nearer to the edge they stand before it. */
const LABEL_ROOM_PX = 110;
/** Along the first rise of the plan there is room for its name if it is so high, and so far from the edge. */
const NAME_ROOM_PX = 70;
const NAME_WIDTH_PX = 150;

/** The way up the model would plan from the cursor, with its stops: dashed, since nobody has swum it. */
function WayUp({
  scene,
  sample,
  scales: { x, y, inner },
  units,
}: Pick<PictureProps, 'scene' | 'sample' | 'units'> & { scales: ProfileScales }) {
  const { timeline, figures } = scene;
  const schedule = useMemo(() => plannedAt(timeline, figures, sample), [timeline, figures, sample]);
  if (timeline.depthM[sample] === 0 || !Number.isFinite(schedule.timeToSurfaceMin)) return null;
  const startS = timeline.timeS[sample]!;
  const parts = timed(schedule.parts, startS);
  const stops = parts.filter((part) => part.fromM === part.toM);
  const [first] = parts;
  const fromY = y(timeline.depthM[sample]!);
  // Only where nothing else is drawn: while the diver is not on that way already.
  const leg = timeline.legs[timeline.leg[sample]!]!;
  const named =
    first !== undefined &&
    leg.toM >= leg.fromM &&
    fromY - y(first.toM) >= NAME_ROOM_PX &&
    x(startS) + NAME_WIDTH_PX <= inner.width;
  const path = parts.map((part) => `L${x(part.endS).toFixed(1)},${y(part.toM).toFixed(1)}`);
  return (
    <g clipPath="url(#dive-frame)" className={styles.wayUp}>
      <path
        className={stops.length > 0 ? styles.withStops : undefined}
        d={`M${x(startS).toFixed(1)},${y(timeline.depthM[sample]!).toFixed(1)}${path.join('')}`}
      />
      {named && (
        <text x={x(startS + first!.minutes * 30) + 10} y={(fromY + y(first!.toM)) / 2} dy="0.35em">
          way up, planned
        </text>
      )}
      {stops.map((stop) => {
        const before = x(stop.endS) + LABEL_ROOM_PX > inner.width;
        return (
          <text
            key={stop.toM}
            x={x(stop.endS) + (before ? -6 : 6)}
            y={y(stop.toM) + (before ? -6 : 12)}
            textAnchor={before ? 'end' : 'start'}
          >
            {stop.minutes} min at {printStopDepth(stop.toM, units)}
          </text>
        );
      })}
    </g>
  );
}

/** The parts of an ascent with the times they end at, s. */
function timed(parts: readonly AscentPart[], startS: number): readonly (AscentPart & { readonly endS: number })[] {
  const placed: (AscentPart & { endS: number })[] = [];
  for (const part of parts) placed.push({ ...part, endS: (placed.at(-1)?.endS ?? startS) + part.minutes * 60 });
  return placed;
}

'use client';

import { useMemo, useRef, type ReactNode } from 'react';
import { plannedAt } from '@/lib/ascent/plan/ascent-start';
import type { AscentPart } from '@/lib/ascent/plan/schedule';
import { sayStop } from '@/lib/sayings/stop-state';
import type { OverlaidDive } from './overlaid-dive';
import { OverlayPath } from './OverlayPath';
import type { PictureProps } from '../picture-props';
import { ProfileGround } from './ProfileGround';
import { PROFILE_MARGIN, pointerIn, profileScales, type ProfileScales } from './profile-scales';
import { stopLabels } from './stop-labels';
import { Rock } from '../axes/Rock';
import { TimeCursor } from '../axes/TimeCursor';
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

  // No `TimePlot`: what lies on top is taken hold of, and a press on it must not move the cursor; nothing is told at a pointer.
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
          <TimeCursor x={x(cursorS)} {...inner}>
            <circle cy={y(scene.timeline.depthM[sample]!)} r={6} />
          </TimeCursor>
        </g>
        {children?.(scales)}
      </g>
    </svg>
  );
}

/** The way up the model would plan from the cursor, with its stops: dashed, since nobody has swum it. */
function WayUp({
  scene,
  sample,
  scales: { x, y, inner },
  units,
}: Pick<PictureProps, 'scene' | 'sample' | 'units'> & { scales: ProfileScales }) {
  const { timeline, figures } = scene;
  const schedule = useMemo(() => plannedAt(timeline, figures, sample), [timeline, figures, sample]);
  const swum = useMemo(
    () =>
      timeline.legs.map(
        ({ startS, endS, fromM, toM }) => [place(x(startS), y(fromM)), place(x(endS), y(toM))] as const,
      ),
    [timeline, x, y],
  );
  if (timeline.depthM[sample] === 0 || !Number.isFinite(schedule.timeToSurfaceMin)) return null;
  const startS = timeline.timeS[sample]!;
  const parts = timed(schedule.parts, startS);
  const planned = parts.map(
    (part) => [place(x(part.startS), y(part.fromM)), place(x(part.endS), y(part.toM))] as const,
  );
  const at = place(x(startS), y(timeline.depthM[sample]!));
  const cursor = [[place(at.x, 0), place(at.x, inner.height)], ...corners(at, RING, RING)] as const;
  const points = timeline.legs.flatMap(({ endS, toM }) => corners(place(x(endS), y(toM)), POINT.x, POINT.y));
  const stops = parts.filter((part) => part.fromM === part.toM);
  const riseEndS = stops[0]?.startS ?? parts.at(-1)!.endS;
  const middleX = x((startS + riseEndS) / 2);
  const riseName = {
    text: 'way up, planned',
    fromX: middleX,
    toX: middleX,
    y: (y(timeline.depthM[sample]!) + y(stops[0]?.toM ?? 0)) / 2,
  };
  const lines = [...swum, ...planned, ...cursor, ...points];
  const labelled = (first: string) =>
    stopLabels(
      [
        ...stops.map((stop, index) => ({
          text: `${index === 0 ? first : ''}${sayStop({ depthM: stop.toM, minutes: stop.minutes }, units)}`,
          fromX: x(stop.startS),
          toX: x(stop.endS),
          y: y(stop.toM),
        })),
        riseName,
      ],
      lines,
      inner,
    );
  // Where the way up has no room for its name, its first stop says that it is planned, if that has.
  const isNamed = (all: ReturnType<typeof labelled>) => all.some(({ text }) => text.includes('planned'));
  const plain = labelled('');
  const told = isNamed(plain) || stops.length === 0 ? plain : labelled('planned: ');
  const labels = isNamed(told) ? told : plain;
  const path = planned.map(([, to]) => `L${to.x.toFixed(1)},${to.y.toFixed(1)}`);
  return (
    <g clipPath="url(#dive-frame)" className={styles.wayUp}>
      <path
        className={stops.length > 0 ? styles.withStops : undefined}
        d={`M${x(startS).toFixed(1)},${y(timeline.depthM[sample]!).toFixed(1)}${path.join('')}`}
      />
      {labels.map((label) => (
        <text key={label.text} x={label.x} y={label.y} textAnchor={label.anchor}>
          {label.text}
        </text>
      ))}
    </g>
  );
}

/** Half of what the ring at the cursor takes, and a point of the dive, with some air. */
const RING = 10;
const POINT = { x: 8, y: 5.5 };

const place = (x: number, y: number) => ({ x, y });

/** Corner to corner of what reaches so far from a place. */
const corners = (at: { readonly x: number; readonly y: number }, byX: number, byY: number) =>
  [-byY, byY].map((by) => [place(at.x - byX, at.y - by), place(at.x + byX, at.y + by)] as const);

/** The parts of an ascent with the times they begin and end at, s. */
function timed(parts: readonly AscentPart[], startS: number) {
  const placed: (AscentPart & { readonly startS: number; readonly endS: number })[] = [];
  for (const part of parts) {
    const fromS = placed.at(-1)?.endS ?? startS;
    placed.push({ ...part, startS: fromS, endS: fromS + part.minutes * 60 });
  }
  return placed;
}

'use client';

import { scaleLinear } from 'd3';
import { useMemo } from 'react';
import { sayDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import type { Scene } from '../scene';
import type { PictureProps } from './picture-props';
import { seriesPath, thinned } from './series-path';
import { timeScale, timeTicks } from './time-scale';
import styles from './pictures.module.css';

export const PROFILE_MARGIN = { top: 18, right: 18, bottom: 30, left: 52 };

/** The scales of a profile: shared by what is drawn, what is dragged and what is pointed at. */
export function profileScales({ timeline }: Scene, width: number, height: number, view?: PictureProps['view']) {
  const inner = { width: width - PROFILE_MARGIN.left - PROFILE_MARGIN.right, height: height - PROFILE_MARGIN.top - PROFILE_MARGIN.bottom };
  const deepestM = timeline.legs.reduce((deepest, leg) => Math.max(deepest, leg.toM), 6);
  return { inner, x: timeScale(timeline, inner.width, view), y: scaleLinear([0, deepestM * 1.08], [0, inner.height]), deepestM };
}

/** Depths to mark, m, at round figures of the reader's own unit. */
export function depthTicks(deepestM: number, units: UnitSystem, most = 7): number[] {
  const unitM = units === 'metric' ? 1 : METRES_PER_FOOT;
  const step = [3, 5, 10, 20, 25, 50, 100, 200].find((size) => deepestM / (size * unitM) <= most) ?? 500;
  const ticks: number[] = [];
  for (let depth = 0; depth * unitM <= deepestM * 1.04; depth += step) ticks.push(depth * unitM);
  return ticks;
}

/** The dive's depth over time, with the ceiling drawn in as a roof of rock the diver may not pass. */
export function ProfilePicture({ scene, sample, cursorS, width, height, units, onCursor, view }: PictureProps) {
  const { timeline, figures } = scene;
  const scales = useMemo(() => profileScales(scene, width, height, view), [scene, width, height, view]);
  const { inner, x, y, deepestM } = scales;
  const paths = useMemo(() => {
    const some = thinned(timeline.length, inner.width);
    const at = (i: number) => x(timeline.timeS[i]!);
    const roof = seriesPath(some, at, (i) => y(figures.ceilingM[i]!));
    const edge = seriesPath(some, at, (i) => (figures.ceilingM[i]! > 0 ? y(figures.ceilingM[i]!) : NaN));
    return {
      roof: `${roof}L${at(timeline.length - 1).toFixed(1)},0L0,0Z`,
      roofEdge: edge,
      low: seriesPath(some, at, (i) => (figures.ceilingAtLowM[i]! > 0 ? y(figures.ceilingAtLowM[i]!) : NaN)),
      depth: `M0,0${timeline.legs.map((leg) => `L${x(leg.endS).toFixed(1)},${y(leg.toM).toFixed(1)}`).join('')}`,
      stopsAsked: figures.ceilingM.some((ceiling) => ceiling > 0),
    };
  }, [timeline, figures, inner.width, x, y]);
  const split = timeline.dive.settings.gradientFactors.low < timeline.dive.settings.gradientFactors.high;
  const cursorX = x(cursorS);
  const depthM = timeline.depthM[sample]!;

  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      className={styles.picture}
      aria-hidden="true"
      onPointerDown={(event) => onCursor(x.invert(pointerX(event)))}
      onPointerMove={(event) => event.buttons === 1 && onCursor(x.invert(pointerX(event)))}
    >
      <defs>
        <pattern id="rock" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="7" height="7" className={styles.rockGround} />
          <line x1="0" y1="0" x2="0" y2="7" className={styles.rockLine} />
        </pattern>
      </defs>
      <g transform={`translate(${PROFILE_MARGIN.left},${PROFILE_MARGIN.top})`}>
        <clipPath id="dive-frame">
          <rect y={-PROFILE_MARGIN.top} width={inner.width} height={inner.height + PROFILE_MARGIN.top + 6} />
        </clipPath>
        {depthTicks(deepestM, units).map((depth) => (
          <g key={depth} transform={`translate(0,${y(depth)})`}>
            <line x2={inner.width} className={depth === 0 ? styles.surface : styles.grid} />
            <text x={-8} dy="0.32em" className={styles.axis} textAnchor="end">
              {sayDepth(depth, units)}
            </text>
          </g>
        ))}
        {timeTicks(x, inner.width).map((timeS) => (
          <g key={timeS} transform={`translate(${x(timeS)},${inner.height})`}>
            <line y2={5} className={styles.tick} />
            <text y={20} className={styles.axis} textAnchor="middle">
              {Math.round(timeS / 60)} min
            </text>
          </g>
        ))}
        <g clipPath="url(#dive-frame)">
        {paths.stopsAsked && (
          <>
            <path d={paths.roof} fill="url(#rock)" />
            <path d={paths.roofEdge} className={styles.ceiling} />
          </>
        )}
        {split && <path d={paths.low} className={styles.ceilingLow} />}
        <path d={paths.depth} className={styles.profile} />
        {x.breaks.map((gap) => (
          <g key={gap.startS} transform={`translate(${(x(gap.startS) + x(gap.endS)) / 2},0)`} className={styles.break}>
            <path d="M-7,-9l4,18M1,-9l4,18" />
            <text y={-10} textAnchor="middle">
              {Math.round((gap.endS - gap.startS) / 60)} min
            </text>
          </g>
        ))}
        <g transform={`translate(${cursorX},0)`} className={styles.cursor}>
          <line y1={-6} y2={inner.height} />
          <circle cy={y(depthM)} r={6} />
        </g>
        </g>
      </g>
    </svg>
  );
}

/** How far right of the picture's inner edge a pointer is, in picture units. */
function pointerX(event: React.PointerEvent<SVGSVGElement>): number {
  const box = event.currentTarget.getBoundingClientRect();
  return ((event.clientX - box.left) / box.width) * event.currentTarget.viewBox.baseVal.width - PROFILE_MARGIN.left;
}

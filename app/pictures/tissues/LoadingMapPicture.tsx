'use client';

import { memo, useId, useLayoutEffect, useMemo, useRef } from 'react';
import { sayAtDayClock } from '@/lib/dive/day-clock';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { mapPalette } from './map-palette';
import { paintMap, type MapBrush } from './paint-map';
import { printPercent } from '@/lib/quantity/percent';
import type { PictureProps } from '../picture-props';
import { usePictureScale } from '../picture-scale';
import { share } from '../hand/PointerTip';
import { supersaturationColumns, type Basis, type SupersaturationColumns } from './supersaturation-columns';
import { TimeAxis } from '../axes/TimeAxis';
import { timePicture, type TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import { useScreen } from '../hand/use-screen';
import shared from '../pictures.module.css';
import styles from './loading-map.module.css';

const RIM = { top: 22, bottom: 58 };
/** Room for the whole words of the legend. */
const LEGEND_WIDE = 740;

/** Sixteen rows, fast to slow, over time; the fuller of gas above what surrounds it, the darker; striped past its limit. */
export function LoadingMapPicture({
  scene,
  cursorS,
  width,
  height,
  onCursor,
  view,
  basis,
}: PictureProps & { basis: Basis }) {
  const frame = useMemo(() => timePicture(scene, width, height, RIM, view), [scene, width, height, view]);
  const columns = useMemo(() => supersaturationColumns(scene, frame.columns, basis), [scene, frame, basis]);
  const { inner } = frame;
  const halfTimes = scene.timeline.compartments.nitrogenHalfTimeMin;
  const row = inner.height / COMPARTMENTS;
  const rowAt = (y: number) => Math.floor(y / row);

  return (
    <>
      <MapCanvas frame={frame} columns={columns} />
      <TimePlot
        {...{ frame, width, height, cursorS, onCursor }}
        className={styles.over}
        mark={({ y }) => (
          <rect x={-2} y={rowAt(y) * row} width={inner.width + 4} height={row} className={styles.pointedRow} />
        )}
        tip={({ x, y, column }) => {
          const c = rowAt(y);
          if (c < 0 || c >= COMPARTMENTS) return undefined;
          return {
            title: `Compartment ${c + 1}, half-time ${halfTimes[c]} min`,
            y: (c + 0.5) * row,
            lines: [
              sayShare(columns.values[column * COMPARTMENTS + c]!, columns.limit[column]!),
              small(sayAtDayClock(frame.timeline, frame.x.invert(x))),
            ],
          };
        }}
      >
        <Ground frame={frame} halfTimes={halfTimes} />
      </TimePlot>
    </>
  );
}

const small = (sentence: string) => sentence.charAt(0).toLowerCase() + sentence.slice(1);

/** A supersaturation in words. */
function sayShare(value: number, limit: number): string {
  if (value <= 0) return 'no supersaturation';
  return value > limit
    ? `${printPercent(value)}: past the limit of ${printPercent(limit)}`
    : `${printPercent(value)}, the limit is ${printPercent(limit)}`;
}

const MapCanvas = memo(function MapCanvas({ frame, columns }: { frame: TimePicture; columns: SupersaturationColumns }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const brush = useRef<MapBrush>({});
  const palette = useRef<{ of: unknown; palette: ReturnType<typeof mapPalette> }>(null);
  const screen = useScreen();
  const scale = usePictureScale();
  const { margin, inner } = frame;
  const width = margin.left + inner.width + margin.right;
  const height = margin.top + inner.height + margin.bottom;
  useLayoutEffect(() => {
    if (!canvas.current) return;
    if (palette.current?.of !== screen) palette.current = { of: screen, palette: mapPalette(canvas.current) };
    paintMap(canvas.current, brush.current, columns, palette.current.palette, {
      ...inner,
      pixelRatio: screen.pixelRatio * scale,
    });
  }, [columns, inner, screen, scale]);
  return (
    <canvas
      ref={canvas}
      aria-hidden="true"
      className={styles.map}
      style={{
        left: share(margin.left, width),
        top: share(margin.top, height),
        width: share(inner.width, width),
        height: share(inner.height, height),
      }}
    />
  );
});

/** The half-times on the left, the compartments on the right, time along the foot and what the shades mean. */
const Ground = memo(function Ground({ frame, halfTimes }: { frame: TimePicture; halfTimes: Float64Array }) {
  const { margin, inner, x } = frame;
  const id = useId();
  const row = inner.height / COMPARTMENTS;
  const middle = (c: number) => (c + 0.5) * row;
  return (
    <>
      {Array.from(halfTimes, (halfTimeMin, c) => (
        <g key={c} className={styles.rowName}>
          <text x={-8} y={middle(c)} dy="0.34em" textAnchor="end">
            {halfTimeMin}
          </text>
          <text x={inner.width + 16} y={middle(c)} dy="0.34em" textAnchor="end">
            {c + 1}
          </text>
        </g>
      ))}
      <text x={-margin.left + 2} y={-8} className={shared.axis}>
        half-time, min
      </text>
      <text x={inner.width + 16} y={-8} className={shared.axis} textAnchor="end">
        compartment
      </text>
      <rect width={inner.width} height={inner.height} className={styles.edge} />
      <TimeAxis x={x} width={inner.width} y={inner.height} />
      <defs>
        <linearGradient id={`${id}shades`}>
          <stop offset="0" className={styles.shadeNone} />
          <stop offset="1" className={styles.shadeFull} />
        </linearGradient>
        <pattern id={`${id}past`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="5" height="5" className={styles.past} />
          <line y2="5" className={styles.stripe} />
        </pattern>
      </defs>
      <Legend
        y={inner.height + 34}
        wide={inner.width > LEGEND_WIDE}
        shades={`url(#${id}shades)`}
        past={`url(#${id}past)`}
      />
    </>
  );
});

/** What the shades and the stripes mean, in words beside each. */
function Legend({ y, wide, shades, past }: { y: number; wide: boolean; shades: string; past: string }) {
  const places = wide ? { none: 0, shades: 158, past: 430 } : { none: 0, shades: 62, past: 202 };
  return (
    <g transform={`translate(0,${y})`} className={styles.legend}>
      <rect x={places.none} width={18} height={14} className={styles.none} />
      <text x={places.none + 24} y={12}>
        {wide ? 'no supersaturation' : 'none'}
      </text>
      <rect x={places.shades} width={90} height={14} fill={shades} />
      <text x={places.shades + 96} y={12}>
        {wide ? `${printPercent(1)} of the model’s limit` : printPercent(1)}
      </text>
      <rect x={places.past} width={18} height={14} fill={past} />
      <text x={places.past + 24} y={12}>
        {wide ? 'past the gradient factor: a stop is needed' : 'past the limit'}
      </text>
    </g>
  );
}

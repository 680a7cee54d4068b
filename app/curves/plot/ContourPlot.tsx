'use client';

import { contours, geoPath, geoTransform } from 'd3';
import { useId, useMemo, type PointerEvent } from 'react';
import type { SweepGrid } from '@/lib/curves/gradient-factor-sweep';
import { CrossAxes, CROSS_MARGIN as MARGIN } from '../../pictures/axes/CrossAxes';
import { Plate } from '../../pictures/axes/Plate';
import { evenAxis } from '../../pictures/axes/plot-axis';
import { placeIn } from '../../pictures/hand/use-pointed';
import { contourLevels, contourSurface } from './contour-levels';
import { shapeOf } from './curve-looks';
import styles from './plot.module.css';

interface ContourPlotProps {
  width: number;
  height: number;
  grid: SweepGrid;
  /** Where the cursor is: gradient factors, 0–1. */
  at: { readonly low: number; readonly high: number };
  onMove: (at: { low: number; high: number }) => void;
}

const DARKEST = 0.42;

/** Low across, high upward, minutes as contours: lines of equal time, darker where it is longer. */
export function ContourPlot({ width, height, grid, at, onMove }: ContourPlotProps) {
  const clip = useId();
  const inner = { width: width - MARGIN.left - MARGIN.right, height: height - MARGIN.top - MARGIN.bottom };
  const [from, to] = [grid.lows[0]!, grid.lows.at(-1)!];
  const across = evenAxis('Low gradient factor, %', from, to, 100);
  const down = evenAxis('High gradient factor, %', grid.highs[0]!, grid.highs.at(-1)!, 100);
  const x = across.scale([0, inner.width]);
  const y = down.scale([inner.height, 0]);
  const levels = useMemo(() => contourLevels(grid), [grid]);
  const shapes = useMemo(() => {
    const across = inner.width / (grid.lows.length - 1);
    const up = inner.height / (grid.highs.length - 1);
    // A value stands at the middle of its cell, half a cell in from where contours count.
    const place = geoTransform({
      point(column, row) {
        this.stream.point((column - 0.5) * across, inner.height - (row - 0.5) * up);
      },
    });
    const path = geoPath(place).digits(1);
    return contours()
      .size([grid.lows.length, grid.highs.length])
      .thresholds(levels)(contourSurface(grid))
      .map((shape) => ({
        level: shape.value,
        d: path(shape) ?? '',
        label: labelPlace(shape.coordinates, across, up, inner),
      }));
  }, [grid, levels, inner.width, inner.height]); // oxlint-disable-line react/exhaustive-deps -- inner is made of these two
  const move = (event: PointerEvent<SVGSVGElement>) => {
    const place = placeIn(event, MARGIN, width);
    const held = (value: number) => Math.min(to, Math.max(from, value));
    const high = held(y.invert(place.y));
    onMove({ low: Math.min(high, held(x.invert(place.x))), high });
  };
  return (
    <Plate
      width={width}
      height={height}
      margin={MARGIN}
      className={styles.plot}
      onPointerDown={move}
      onPointerMove={(event) => event.buttons === 1 && move(event)}
    >
      <defs>
        <clipPath id={clip}>
          <path d={`M0,${inner.height}L${inner.width},0H0Z`} />
        </clipPath>
      </defs>
      <CrossAxes x={x} y={y} across={across} down={down} inner={inner} />
      <path d={`M0,${inner.height}L${inner.width},0V${inner.height}Z`} className={styles.noPair} />
      <g clipPath={`url(#${clip})`}>
        {shapes.map(({ level, d }) => (
          <path key={level} d={d} className={styles.shade} fillOpacity={DARKEST / shapes.length} />
        ))}
        {shapes.map(({ level, d }) => (
          <path key={level} d={d} className={styles.contour} />
        ))}
      </g>
      {shapes.map(
        ({ level, label }) =>
          label && (
            <text key={level} x={label[0]} y={label[1]} dy="0.32em" textAnchor="middle" className={styles.name}>
              {level}
            </text>
          ),
      )}
      <text x={inner.width * 0.66} y={inner.height * 0.78} textAnchor="middle" className={styles.aside}>
        low is never above high
      </text>
      <path d={`M${x(at.low)},0V${inner.height}M0,${y(at.high)}H${inner.width}`} className={styles.cursor} />
      <path d={shapeOf(0, 150)} transform={`translate(${x(at.low)},${y(at.high)})`} className={styles.hit} />
    </Plate>
  );
}

/** A place on a contour's line well inside the pairs there are: as near as any to a third of the way across. */
function labelPlace(
  coordinates: readonly (readonly (readonly number[][])[])[] | number[][][][],
  across: number,
  up: number,
  inner: { width: number; height: number },
): readonly [number, number] | undefined {
  let best: readonly [number, number] | undefined;
  let nearest = Infinity;
  for (const polygon of coordinates as number[][][][]) {
    for (const ring of polygon) {
      for (const [column, row] of ring as [number, number][]) {
        const [px, py] = [(column - 0.5) * across, inner.height - (row - 0.5) * up];
        const insidePairs =
          px > 16 && py > 12 && px < inner.width - 16 && py < inner.height - (inner.height / inner.width) * px - 14;
        const off = Math.abs(px - inner.width * 0.22);
        if (insidePairs && off < nearest) {
          nearest = off;
          best = [px, py];
        }
      }
    }
  }
  return best;
}

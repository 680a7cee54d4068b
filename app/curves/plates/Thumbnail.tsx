'use client';

import { area, line, scaleLinear } from 'd3';
import { memo, useDeferredValue, useMemo } from 'react';
import { useAtlas, type WrittenChoices } from '../chosen/atlas-store';
import type { PlateId } from '../chosen/plate-choices';
import { SKETCHES, type Sketch } from './sketches';
import plot from '../plot/plot.module.css';
import styles from '../curves.module.css';

const WIDTH = 144;
const HEIGHT = 56;

/** A plate in small, with what is chosen on it. */
export const Thumbnail = memo(function Thumbnail({ plate }: { plate: PlateId }) {
  const written = useDeferredValue(useAtlas((state) => state.chosen[plate]));
  const drawn = useMemo(() => marks(SKETCHES[plate](written ?? ({} as WrittenChoices))), [plate, written]);
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className={styles.thumbnail} aria-hidden="true">
      {drawn.cells.map(({ d, opacity }, index) => (
        <path key={index} d={d} className={plot.shade} fillOpacity={opacity} />
      ))}
      {drawn.band && <path d={drawn.band} className={plot.band} />}
      {drawn.lines.map(({ d, tone }, index) => (
        <path key={index} d={d} className={`${plot.curve} ${plot[tone]} ${plot.fine}`} />
      ))}
    </svg>
  );
});

function marks({ across, down, grows, lines = [], band, cells = [] }: Sketch) {
  const x = scaleLinear(across, [0, WIDTH]);
  const y = scaleLinear(down, grows === 'up' ? [HEIGHT, 0] : [0, HEIGHT]);
  const path = line<readonly [number, number]>()
    .defined(([one, other]) => Number.isFinite(one) && Number.isFinite(other))
    .x(([value]) => x(value))
    .y(([, value]) => y(value))
    .digits(1);
  const edges = area<readonly [low: number, high: number, at: number]>()
    .x0(([low]) => x(low))
    .x1(([, high]) => x(Math.min(high, 10 * across[1])))
    .y(([, , at]) => y(at))
    .digits(1);
  return {
    lines: lines.map(({ points, tone }) => ({ d: path(points as [number, number][]) ?? '', tone })),
    band: band && (edges(band as [number, number, number][]) ?? ''),
    cells: cells.map(({ from, to, share }) => ({
      d: `M${x(from[0])},${y(from[1])}H${x(to[0])}V${y(to[1])}H${x(from[0])}Z`,
      opacity: share,
    })),
  };
}

'use client';

import { memo, useMemo } from 'react';
import type { ProfileScales } from '../pictures/profile-scales';
import { runsOf, seriesPath, thinned } from '../pictures/series-path';
import type { OverlaidDive } from './overlaid-dive';
import styles from './overlay.module.css';

/** The second dive: its depth and its ceiling, dashed, under the first. */
export const OverlayPath = memo(function OverlayPath({ dive, scales }: { dive: OverlaidDive; scales: ProfileScales }) {
  const { timeline, figures } = dive;
  const { x, y, inner } = scales;
  const paths = useMemo(() => {
    const at = (i: number) => x(timeline.timeS[i]!);
    return {
      depth: `M${x(0).toFixed(1)},0${timeline.legs.map((leg) => `L${x(leg.endS).toFixed(1)},${y(leg.toM).toFixed(1)}`).join('')}`,
      ceiling: runsOf(thinned(timeline.length, inner.width), (i) => figures.ceilingM[i]! > 0)
        .map((run) => seriesPath(run, at, (i) => y(figures.ceilingM[i]!)))
        .join(''),
    };
  }, [timeline, figures, x, y, inner.width]);
  return (
    <g clipPath="url(#dive-frame)" className={styles.overlay} aria-hidden="true">
      <path d={paths.depth} className={styles.depth} />
      <path d={paths.ceiling} className={styles.ceiling} />
    </g>
  );
});

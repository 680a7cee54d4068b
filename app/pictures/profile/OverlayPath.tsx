'use client';

import { memo, useMemo } from 'react';
import { ceilingEdges, divePath } from './dive-path';
import type { ProfileScales } from './profile-scales';
import { thinned } from '../axes/series-path';
import type { OverlaidDive } from './overlaid-dive';
import styles from './overlay.module.css';

interface OverlayPathProps {
  dive: OverlaidDive;
  scales: ProfileScales;
  /** Dotted where another is dashed already. */
  second?: boolean;
}

/** The second dive: its depth and its ceiling, dashed, under the first. */
export const OverlayPath = memo(function OverlayPath({ dive, scales, second = false }: OverlayPathProps) {
  const { timeline, figures } = dive;
  const { x, y, inner } = scales;
  const paths = useMemo(
    () => ({
      depth: divePath(timeline, { x, y }),
      ceiling: ceilingEdges(timeline, figures.ceilingM, thinned(timeline.length, inner.width), { x, y })
        .map(({ path }) => path)
        .join(''),
    }),
    [timeline, figures, x, y, inner.width],
  );
  return (
    <g clipPath="url(#dive-frame)" className={`${styles.overlay} ${second ? styles.second : ''}`} aria-hidden="true">
      <path d={paths.depth} className={styles.depth} />
      <path d={paths.ceiling} className={styles.ceiling} />
    </g>
  );
});

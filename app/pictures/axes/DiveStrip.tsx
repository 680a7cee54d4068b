import { scaleLinear } from 'd3';
import { memo } from 'react';
import type { Scene } from '../scene';
import { Clipped } from './Clipped';
import type { TimeFrame } from './time-picture';
import styles from '../pictures.module.css';

const HEIGHT = 24;
/** Room it takes above what stands over a plot. */
export const DIVE_STRIP = HEIGHT + 6;

/** The dive itself as a thin strip over a picture that shares its time axis, so that what is read is placed on it. */
export const DiveStrip = memo(function DiveStrip({ scene, frame }: { scene: Scene; frame: TimeFrame }) {
  const { legs } = scene.timeline;
  const { x, inner, margin } = frame;
  const y = scaleLinear([0, legs.reduce((deepest, leg) => Math.max(deepest, leg.toM), 6)], [0, HEIGHT - 1]);
  const line = legs.map((leg) => `L${x(leg.endS).toFixed(1)},${y(leg.toM).toFixed(1)}`).join('');
  return (
    <g transform={`translate(0,${2 - margin.top})`}>
      <text x={-8} y={HEIGHT / 2} dy="0.34em" textAnchor="end" className={styles.axis}>
        dive
      </text>
      <Clipped width={inner.width} height={HEIGHT} above={2}>
        <path d={`M${x(0).toFixed(1)},0${line}Z`} className={styles.strip} />
      </Clipped>
    </g>
  );
});

import { scaleLinear } from 'd3';
import { memo } from 'react';
import type { Scene } from '../scene';
import type { TimeFrame } from './time-picture';
import styles from '../pictures.module.css';

/** The dive itself, faintly, behind a picture that shares its time axis. */
export const DiveGhost = memo(function DiveGhost({ scene, frame }: { scene: Scene; frame: TimeFrame }) {
  const { legs } = scene.timeline;
  const { x, inner } = frame;
  const y = scaleLinear([0, legs.reduce((deepest, leg) => Math.max(deepest, leg.toM), 6) * 1.05], [0, inner.height]);
  const line = legs.map((leg) => `L${x(leg.endS).toFixed(1)},${y(leg.toM).toFixed(1)}`).join('');
  return <path d={`M${x(0).toFixed(1)},0${line}Z`} className={styles.ghost} />;
});

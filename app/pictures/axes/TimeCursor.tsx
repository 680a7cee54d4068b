import type { ReactNode } from 'react';
import styles from '../pictures.module.css';

/** The one time cursor, drawn through a picture `height` tall, with what stands on it. */
export function TimeCursor(props: { x: number; width: number; height: number; children?: ReactNode }) {
  const { x, width, height, children } = props;
  if (x < 0 || x > width) return null;
  return (
    <g transform={`translate(${x},0)`} className={styles.cursor}>
      <line y1={-6} y2={height} />
      {children}
    </g>
  );
}

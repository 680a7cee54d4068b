import type { ReactNode } from 'react';
import { DiveStrip } from './DiveStrip';
import { TimeAxis } from './TimeAxis';
import type { TimeFrame } from './time-picture';
import type { Scene } from '../scene';
import styles from '../pictures.module.css';

interface TimeGroundProps {
  frame: TimeFrame;
  /** The dive to show above it all, where the frame keeps room for its strip. */
  dive?: Scene;
  /** Room between the foot of the plot and the minutes. */
  below?: number;
  children: ReactNode;
}

/** What plots over time stand on: a line at their foot and minutes under it. */
export function TimeGround({ frame, dive, below = 0, children }: TimeGroundProps) {
  const { inner, x } = frame;
  return (
    <>
      {dive && <DiveStrip scene={dive} frame={frame} />}
      {children}
      <path d={`M0,${inner.height}H${inner.width}`} className={styles.surface} />
      <TimeAxis x={x} width={inner.width} y={inner.height + below} />
    </>
  );
}

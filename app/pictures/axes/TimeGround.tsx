import type { ReactNode } from 'react';
import { DiveGhost } from './DiveGhost';
import { Clipped } from './Clipped';
import { TimeAxis } from './TimeAxis';
import type { TimeFrame } from './time-picture';
import type { Scene } from '../scene';
import styles from '../pictures.module.css';

interface TimeGroundProps {
  frame: TimeFrame;
  /** The dive to show faintly behind it all. */
  behind?: Scene;
  /** Room between the foot of the plot and the minutes. */
  below?: number;
  children: ReactNode;
}

/** What plots over time stand on: a line at their foot and minutes under it. */
export function TimeGround({ frame, behind, below = 0, children }: TimeGroundProps) {
  const { inner, margin, x } = frame;
  return (
    <>
      {behind && (
        <Clipped {...inner} above={margin.top}>
          <DiveGhost scene={behind} frame={frame} />
        </Clipped>
      )}
      {children}
      <path d={`M0,${inner.height}H${inner.width}`} className={styles.surface} />
      <TimeAxis x={x} width={inner.width} y={inner.height + below} />
    </>
  );
}

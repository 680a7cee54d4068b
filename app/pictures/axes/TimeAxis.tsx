import { memo } from 'react';
import { timeTicks, type TimeScale } from './time-scale';
import styles from '../pictures.module.css';

/** Minutes along the foot of a picture, on the scale the profile has, with a mark where hours at the surface are drawn short. */
export const TimeAxis = memo(function TimeAxis({ x, width, y }: { x: TimeScale; width: number; y: number }) {
  return (
    <g transform={`translate(0,${y})`}>
      {timeTicks(x, width).map((timeS) => (
        <g key={timeS} transform={`translate(${x(timeS)},0)`}>
          <line y2={5} className={styles.tick} />
          <text y={20} className={styles.axis} textAnchor="middle">
            {Math.round(timeS / 60)} min
          </text>
        </g>
      ))}
      {x.breaks.map((gap) => {
        const middle = (x(gap.startS) + x(gap.endS)) / 2;
        return (
          middle >= 0 &&
          middle <= width && (
            <g key={gap.startS} transform={`translate(${middle},0)`} className={styles.break}>
              <path d="M-7,-7l4,14M1,-7l4,14" />
            </g>
          )
        );
      })}
    </g>
  );
});

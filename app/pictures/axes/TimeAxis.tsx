import { memo } from 'react';
import { timeTicks, type TimeScale } from './time-scale';
import styles from '../pictures.module.css';

interface TimeAxisProps {
  x: TimeScale;
  width: number;
  y: number;
}

/** Minutes along the foot of a picture. */
export const Minutes = memo(function Minutes({ x, width, y }: TimeAxisProps) {
  return timeTicks(x, width).map(({ timeS, text }) => (
    <g key={timeS} transform={`translate(${x(timeS)},${y})`}>
      <line y2={5} className={styles.tick} />
      <text y={20} className={styles.axis} textAnchor="middle">
        {text}
      </text>
    </g>
  ));
});

/** Minutes on the scale the profile has, with a mark where hours at the surface are drawn short. */
export const TimeAxis = memo(function TimeAxis({ x, width, y }: TimeAxisProps) {
  return (
    <g transform={`translate(0,${y})`}>
      <Minutes x={x} width={width} y={0} />
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

import { memo } from 'react';
import { columnRuns } from './time-columns';
import styles from './leader-strip.module.css';

interface LeaderStripProps {
  /** What the strip's compartments lead. */
  name: string;
  /** Compartment 1–16 of every pixel column; 0 where none leads. */
  leaders: ArrayLike<number>;
  y: number;
}

export const STRIP_HEIGHT = 17;
const ROOM_FOR_NUMBER = 15;

/** Which compartment leads, along the foot of a picture: a stretch for each, with its number where it fits. */
export const LeaderStrip = memo(function LeaderStrip({ name, leaders, y }: LeaderStripProps) {
  const runs = columnRuns(leaders);
  const boxes = (odd: number) =>
    runs
      .filter(({ value }) => value % 2 === odd)
      .map(({ from, to }) => `M${from},0H${to}V${STRIP_HEIGHT}H${from}Z`)
      .join('');
  return (
    <g transform={`translate(0,${y})`} className={styles.strip}>
      <text x={-8} y={STRIP_HEIGHT / 2} dy="0.34em" textAnchor="end" className={styles.name}>
        {name}
      </text>
      <path d={boxes(1)} className={styles.odd} />
      <path d={boxes(0)} className={styles.even} />
      <path d={runs.map(({ from }) => `M${from},0V${STRIP_HEIGHT}`).join('')} className={styles.divide} />
      {runs
        .filter(({ from, to }) => to - from >= ROOM_FOR_NUMBER)
        .map(({ value, from, to }, index) => (
          <text key={index} x={(from + to) / 2} y={STRIP_HEIGHT / 2} dy="0.34em" textAnchor="middle">
            {value}
          </text>
        ))}
    </g>
  );
});

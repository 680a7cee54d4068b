import { tenth } from './time-columns';
import styles from '../pictures.module.css';

interface Level {
  readonly y: number;
  readonly text: string;
  /** The surface, and not a value among others. */
  readonly surface?: boolean;
}

/** Values up the side of a picture, each with a line across it. */
export function Levels({ levels, width }: { levels: readonly Level[]; width: number }) {
  return levels.map(({ y, text, surface }, index) => (
    <g key={index} transform={`translate(0,${tenth(y)})`}>
      <line x2={width} className={surface ? styles.surface : styles.grid} />
      <text x={-8} dy="0.32em" className={styles.axis} textAnchor="end">
        {text}
      </text>
    </g>
  ));
}

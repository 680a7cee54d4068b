import { PAD, type SketchAxes } from './sketch-axes';
import styles from './sketch.module.css';

/** A time further right than this would not be whole on the paper, in the middle under its line. */
const LAST_MIDDLE = PAD.width - PAD.right - 24;

/** The axes of the paper, with their ticks. */
export function SketchGround({ axes }: { axes: SketchAxes }) {
  return (
    <>
      {axes.valueTicks.map(({ value, label }, index) => (
        <g key={label} transform={`translate(0,${axes.y(value)})`}>
          <line x1={PAD.left} x2={PAD.width - PAD.right} className={styles.grid} />
          <text x={PAD.left - 8} dy="0.32em" textAnchor="end" className={styles.axis}>
            {label}
            {index === axes.valueTicks.length - 1 && ` ${axes.unit}`}
          </text>
        </g>
      ))}
      {axes.timeTicks.map(({ timeS, label }, index) => (
        <g key={timeS} transform={`translate(${axes.x(timeS)},0)`}>
          <line y1={PAD.top} y2={PAD.height - PAD.bottom} className={styles.grid} />
          <text
            y={PAD.height - 12}
            textAnchor={index === 0 ? 'start' : axes.x(timeS) > LAST_MIDDLE ? 'end' : 'middle'}
            className={styles.axis}
          >
            {label}
          </text>
        </g>
      ))}
      {axes.timesSince !== undefined && (
        <text x={PAD.width - PAD.right - 6} y={PAD.top} dy="1.2em" textAnchor="end" className={styles.axis}>
          min after {axes.timesSince}
        </text>
      )}
    </>
  );
}

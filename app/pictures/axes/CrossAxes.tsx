import { Levels } from './Levels';
import type { PlotAxis, PlotScale } from './plot-axis';
import styles from '../pictures.module.css';

/** The room two named axes take around a plot. */
export const CROSS_MARGIN = { top: 14, bottom: 46, left: 54, right: 42 } as const;

interface CrossAxesProps {
  x: PlotScale;
  y: PlotScale;
  across: PlotAxis;
  down: PlotAxis;
  inner: { readonly width: number; readonly height: number };
}

/** What a plot over two measures stands on: its edge, round values along both with lines across, and what they measure. */
export function CrossAxes({ x, y, across, down, inner }: CrossAxesProps) {
  const levels = down.ticks(Math.max(3, Math.round(inner.height / 52)));
  return (
    <>
      <Levels width={inner.width} levels={levels.map(({ at, text }) => ({ y: y(at), text }))} />
      {across.ticks(Math.max(3, Math.round(inner.width / 70))).map(({ at, text }) => (
        <g key={at} transform={`translate(${x(at)},0)`}>
          <line y2={inner.height} className={styles.grid} />
          <text y={inner.height + 19} textAnchor="middle" className={styles.axis}>
            {text}
          </text>
        </g>
      ))}
      <rect width={inner.width} height={inner.height} className={styles.edge} />
      <text x={inner.width / 2} y={inner.height + 39} textAnchor="middle" className={styles.axisTitle}>
        {across.title}
      </text>
      <text
        transform={`translate(-42,${inner.height / 2}) rotate(-90)`}
        textAnchor="middle"
        className={styles.axisTitle}
      >
        {down.title}
      </text>
    </>
  );
}

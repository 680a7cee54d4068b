import styles from '../pictures.module.css';

/** The one time cursor, drawn through a picture `height` tall. */
export function TimeCursor({ x, width, height }: { x: number; width: number; height: number }) {
  if (x < 0 || x > width) return null;
  return (
    <g transform={`translate(${x},0)`} className={styles.cursor}>
      <line y1={-6} y2={height} />
    </g>
  );
}

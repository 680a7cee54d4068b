import { scaleLinear, type ScaleLinear } from 'd3';
import styles from './bring.module.css';

/** Whole minutes along the foot of a picture. */
export function TimeFoot({ endS, x, y }: { endS: number; x: ScaleLinear<number, number>; y: number }) {
  const [left, right] = x.range() as [number, number];
  const ticks = scaleLinear([0, endS / 60], [left, right]).ticks(Math.max(2, Math.floor((right - left) / 90)));
  return (
    <>
      {ticks.map((minutes) => (
        <g key={minutes} transform={`translate(${x(minutes * 60)},${y})`}>
          <path className={styles.tick} d="M0 0v5" />
          <text y="20" className={styles.footLabel}>
            {minutes} min
          </text>
        </g>
      ))}
      <path className={styles.tick} d={`M${left} ${y}H${right}`} />
    </>
  );
}

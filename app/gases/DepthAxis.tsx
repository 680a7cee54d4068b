import type { ScaleLinear } from 'd3';
import { sayDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { depthTicks } from '../pictures/profile/profile-scales';
import styles from './pictures.module.css';

interface DepthAxisProps {
  y: ScaleLinear<number, number>;
  width: number;
  depthM: number;
  units: UnitSystem;
}

/** Depths down the side of a water column, and the depth that is asked about as a line through it. */
export function DepthAxis({ y, width, depthM, units }: DepthAxisProps) {
  const deepestM = y.domain()[1]!;
  return (
    <>
      {depthTicks(deepestM, units).map((tick) => (
        <g key={tick} transform={`translate(0,${y(tick)})`}>
          <line x2={width} className={tick === 0 ? styles.surface : styles.grid} />
          {Math.abs(y(tick) - y(depthM)) > 15 && (
            <text x={-8} dy="0.32em" className={styles.axis} textAnchor="end">
              {sayDepth(tick, units)}
            </text>
          )}
        </g>
      ))}
      <g transform={`translate(0,${y(depthM)})`}>
        <line x1={-4} x2={width} className={styles.here} />
        <text x={-8} dy="0.32em" className={styles.hereLabel} textAnchor="end">
          {sayDepth(depthM, units)}
        </text>
      </g>
    </>
  );
}

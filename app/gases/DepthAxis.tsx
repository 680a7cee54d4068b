import type { ScaleLinear } from 'd3';
import { sayDepth } from '@/lib/quantity/depth';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { Levels } from '../pictures/axes/Levels';
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
      <Levels
        width={width}
        levels={depthTicks(deepestM, units).map((tick) => ({
          y: y(tick),
          // The depth asked about is written in its place.
          text: Math.abs(y(tick) - y(depthM)) > 15 ? sayDepth(tick, units) : '',
          surface: tick === 0,
        }))}
      />
      <g transform={`translate(0,${y(depthM)})`}>
        <line x1={-4} x2={width} className={styles.here} />
        <text x={-8} dy="0.32em" className={styles.hereLabel} textAnchor="end">
          {sayDepth(depthM, units)}
        </text>
      </g>
    </>
  );
}

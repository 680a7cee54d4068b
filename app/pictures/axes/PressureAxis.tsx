import { memo } from 'react';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { PressureScales } from '../tissues/pressure-scales';
import { pressureTicks, pressureUnit } from './pressure-axis';
import { tenth } from './time-columns';
import shared from '../pictures.module.css';
import styles from '../tissues/pressure.module.css';

interface PressureAxisProps extends Pick<PressureScales, 'inner' | 'margin' | 'y'> {
  of: string;
  /** How far over the plot its title stands, px. */
  above: number;
  units: UnitSystem;
}

/** Pressure upward. */
export const PressureAxis = memo(function PressureAxis({ inner, margin, y, of, above, units }: PressureAxisProps) {
  return (
    <>
      {pressureTicks(y, units, inner.height / 60).map(({ bar, text }) => (
        <g key={bar} transform={`translate(0,${tenth(y(bar))})`}>
          <line x2={inner.width} className={shared.grid} />
          <text x={-8} dy="0.32em" className={styles.axis} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <text x={-margin.left + 2} y={-above} className={styles.axis}>
        {of}, {pressureUnit(units).name}
      </text>
    </>
  );
});

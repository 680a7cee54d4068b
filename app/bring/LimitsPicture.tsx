'use client';

import { scaleLinear } from 'd3';
import type { SettingsSet } from '@/lib/files/settings/explain-settings';
import { HIGHEST, LOWEST, type LimitPair } from '@/lib/files/settings/fit-limits';
import { ChartFrame } from '../parts/ChartFrame';
import styles from './bring.module.css';

const SIZE = { width: 520, height: 360 };
const MARGIN = { top: 14, right: 12, bottom: 44, left: 56 };
const TICKS = [20, 40, 60, 80, 100];
const MOST_ROWS = 60;

/** All pairs of limits that explain a unit: filled where the site is as the record says, open where it is another. */
export function LimitsPicture({
  sets,
  others,
  sawStops,
}: {
  sets: readonly SettingsSet[];
  others: readonly SettingsSet[];
  sawStops: boolean;
}) {
  const x = scaleLinear([LOWEST - 1, HIGHEST + 1], [MARGIN.left, SIZE.width - MARGIN.right]);
  const y = scaleLinear([LOWEST - 1, HIGHEST + 1], [SIZE.height - MARGIN.bottom, MARGIN.top]);
  const side = x(1) - x(0);
  const tall = y(0) - y(1);
  const square = ({ low, high }: LimitPair) =>
    // Without a trace of the low one, any of them will do.
    sawStops
      ? `M${x(low) - side / 2} ${y(high) - tall / 2}h${side}v${tall}h${-side}z`
      : `M${x(LOWEST)} ${y(high) - tall / 2}H${x(high)}v${tall}H${x(LOWEST)}z`;
  const path = (of: readonly SettingsSet[]) => of.flatMap(({ pairs }) => pairs.map(square)).join('');
  const count = sets.reduce((sum, { pairs }) => sum + pairs.length, 0);
  return (
    <ChartFrame
      title="Limits that explain the unit"
      headingLevel={3}
      sentence={
        sawStops
          ? `${count} pairs of whole percent explain what was shown${others.length > 0 ? '; outlined are those with another water, altitude, gas or memory' : ''}.`
          : 'The record tells of the high gradient factor alone: the low one may be any up to it.'
      }
      rows={sets.flatMap(({ pairs }) => pairs).slice(0, MOST_ROWS)}
      columns={[
        { heading: 'Low', numeric: true, cell: ({ low }) => (sawStops ? low : 'any') },
        { heading: 'High', numeric: true, cell: ({ high }) => high },
      ]}
    >
      <svg viewBox={`0 0 ${SIZE.width} ${SIZE.height}`} className={styles.limits} aria-hidden="true">
        {TICKS.map((percent) => (
          <g key={percent}>
            <path
              className={styles.grid}
              d={`M${MARGIN.left} ${y(percent)}H${SIZE.width - MARGIN.right}M${x(percent)} ${MARGIN.top}V${SIZE.height - MARGIN.bottom}`}
            />
            <text x={MARGIN.left - 8} y={y(percent)} className={styles.sideLabel}>
              {percent}
            </text>
            <text x={x(percent)} y={SIZE.height - MARGIN.bottom + 18} className={styles.footLabel}>
              {percent}
            </text>
          </g>
        ))}
        <path className={styles.surface} d={`M${x(LOWEST)} ${y(LOWEST)}L${x(HIGHEST)} ${y(HIGHEST)}`} />
        <path className={styles.limitsOther} d={path(others)} />
        <path className={styles.limitsFit} d={path(sets)} />
        <text x={(MARGIN.left + SIZE.width - MARGIN.right) / 2} y={SIZE.height - 6} className={styles.footLabel}>
          low gradient factor, %
        </text>
        <text transform={`translate(14,${SIZE.height / 2}) rotate(-90)`} className={styles.footLabel}>
          high gradient factor, %
        </text>
      </svg>
    </ChartFrame>
  );
}

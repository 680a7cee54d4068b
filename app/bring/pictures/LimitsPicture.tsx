'use client';

import type { SettingsSet } from '@/lib/files/settings/explain-settings';
import { HIGHEST, LOWEST, type LimitPair } from '@/lib/files/settings/fit-limits';
import { ChartFrame } from '../../parts/ChartFrame';
import { CrossAxes, CROSS_MARGIN } from '../../pictures/axes/CrossAxes';
import { Plate } from '../../pictures/axes/Plate';
import { evenAxis } from '../../pictures/axes/plot-axis';
import { useWidth } from '../../parts/use-width';
import styles from './record-picture.module.css';

const WIDEST = 520;
const HEIGHT = 360;
const ACROSS = evenAxis('Low gradient factor, %', LOWEST - 1, HIGHEST + 1);
const DOWN = evenAxis('High gradient factor, %', LOWEST - 1, HIGHEST + 1);
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
  const { ref, width: room } = useWidth<HTMLDivElement>(WIDEST);
  const width = Math.min(room, WIDEST);
  const inner = {
    width: width - CROSS_MARGIN.left - CROSS_MARGIN.right,
    height: HEIGHT - CROSS_MARGIN.top - CROSS_MARGIN.bottom,
  };
  const x = ACROSS.scale([0, inner.width]);
  const y = DOWN.scale([inner.height, 0]);
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
      <div ref={ref}>
        <Plate width={width} height={HEIGHT} margin={CROSS_MARGIN} className={styles.limits}>
          <CrossAxes x={x} y={y} across={ACROSS} down={DOWN} inner={inner} />
          <path className={styles.alike} d={`M${x(LOWEST)} ${y(LOWEST)}L${x(HIGHEST)} ${y(HIGHEST)}`} />
          <path className={styles.limitsOther} d={path(others)} />
          <path className={styles.limitsFit} d={path(sets)} />
        </Plate>
      </div>
    </ChartFrame>
  );
}

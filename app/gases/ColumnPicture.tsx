'use client';

import { area, scaleLinear } from 'd3';
import { useId } from 'react';
import { ambientBarAt, gasModM, hypoxicAboveM, partialPressures } from '@/lib/exposure/gas-depths';
import { gasName, type Gas } from '@/lib/physics/gas';
import { RESTING_PO2_BAR, WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { fixed } from '@/lib/quantity/number';
import { Plate } from '../pictures/axes/Plate';
import { usePreferences } from '../parts/preferences';
import { DepthAxis } from './DepthAxis';
import { COLUMN_MARGIN, depthScale, mostBar, type ColumnProps } from './water-column';
import styles from './pictures.module.css';

const GAP = 14;
const ROOM_FOR_LABEL = 26;
const ROOM_FOR_UNIT = 84;

/** Each gas as a column of water: how wide it is at a depth is what its oxygen, nitrogen and helium press there. */
export function ColumnPicture({ gases, depthM, site, width, height }: ColumnProps) {
  const id = useId();
  const units = usePreferences((state) => state.units);
  const inner = width - COLUMN_MARGIN.left - COLUMN_MARGIN.right;
  const y = depthScale(depthM, height);
  const each = inner / gases.length;
  const x = scaleLinear([0, mostBar(depthM, site)], [0, each - GAP]);
  return (
    <Plate width={width} height={height} margin={COLUMN_MARGIN}>
      <defs>
        <pattern id={`${id}dots`} width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" className={styles.heliumGround} />
          <circle cx="3" cy="3" r="1.3" className={styles.heliumDot} />
        </pattern>
        <pattern id={`${id}thin`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line y2="6" className={styles.thinLine} />
        </pattern>
      </defs>
      {gases.map((gas, index) => (
        <g key={gasName(gas)} transform={`translate(${each * index},0)`}>
          <text y={-26} className={styles.name}>
            {gasName(gas)}
          </text>
          <text y={-9} className={styles.value}>
            {fixed(partialPressures(gas, ambientBarAt(depthM, site)).oxygenBar, 2)}
            {each >= ROOM_FOR_UNIT && ' bar O₂'}
          </text>
          <Column
            gas={gas}
            site={site}
            x={x}
            y={y}
            helium={`url(#${id}dots)`}
            thin={`url(#${id}thin)`}
            width={each - GAP}
          />
        </g>
      ))}
      <DepthAxis y={y} width={inner} depthM={depthM} units={units} />
    </Plate>
  );
}

interface ColumnParts {
  gas: Gas;
  site: ColumnProps['site'];
  x: (bar: number) => number;
  y: ReturnType<typeof depthScale>;
  helium: string;
  thin: string;
  width: number;
}

function Column({ gas, site, x, y, helium, thin, width }: ColumnParts) {
  const depths = y.domain();
  const at = (depth: number) => partialPressures(gas, ambientBarAt(depth, site));
  const band = (from: (depth: number) => number, to: (depth: number) => number) =>
    area<number>()
      .y(y)
      .x0((depth) => x(from(depth)))
      .x1((depth) => x(to(depth)))(depths) ?? '';
  const oxygen = (depth: number) => at(depth).oxygenBar;
  const both = (depth: number) => oxygen(depth) + at(depth).nitrogenBar;
  const all = (depth: number) => ambientBarAt(depth, site);
  const hypoxicM = Math.min(hypoxicAboveM(gas, site), depths[1]!);
  const limits = [WORKING_PO2_BAR, RESTING_PO2_BAR]
    .map((bar) => ({ bar, depthM: gasModM(gas, bar, site) }))
    .filter(({ depthM }) => depthM > 0 && depthM < depths[1]!);
  return (
    <>
      <path d={band(() => 0, oxygen)} className={styles.oxygen} />
      <path d={band(oxygen, both)} className={styles.nitrogen} />
      {gas.he > 0 && <path d={band(both, all)} fill={helium} />}
      <path
        d={`M0,0V${y(depths[1]!)}L${x(all(depths[1]!))},${y(depths[1]!)}L${x(all(0))},0Z`}
        className={styles.outline}
      />
      {hypoxicM > 0 && <rect width={width} height={y(hypoxicM)} fill={thin} />}
      {limits.map(({ bar, depthM }, index) => (
        <g key={bar} transform={`translate(0,${y(depthM)})`}>
          <line x2={width} className={index === 0 ? styles.working : styles.resting} />
          {width > ROOM_FOR_LABEL * 2 && (
            <text x={width} y={-4} textAnchor="end" className={styles.limit}>
              {bar} bar
            </text>
          )}
        </g>
      ))}
    </>
  );
}

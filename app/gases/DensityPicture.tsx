'use client';

import { scaleLinear } from 'd3';
import { gasDensityGL, HIGHEST_DENSITY_GL, RECOMMENDED_DENSITY_GL } from '@/lib/exposure/gas-density';
import { ambientBarAt } from '@/lib/exposure/gas-depths';
import { gasName } from '@/lib/physics/gas';
import { fixed } from '@/lib/quantity/number';
import { spacedOut } from '../pictures/axes/spaced-out';
import { Plate } from '../pictures/axes/Plate';
import { usePreferences } from '../parts/preferences';
import { DepthAxis } from './DepthAxis';
import { COLUMN_MARGIN, deepestShownM, depthScale, type ColumnProps } from './water-column';
import styles from './pictures.module.css';

const NAME_GAP = 46;

/** How dense each gas is to breathe, down the water column, against the two published marks. */
export function DensityPicture({ gases, depthM, site, width, height }: ColumnProps) {
  const units = usePreferences((state) => state.units);
  const inner = width - COLUMN_MARGIN.left - COLUMN_MARGIN.right;
  const y = depthScale(depthM, height);
  const deepestM = deepestShownM(depthM);
  const at = (index: number, depth: number) => gasDensityGL(gases[index]!, ambientBarAt(depth, site));
  const most = Math.max(HIGHEST_DENSITY_GL * 1.15, ...gases.map((_, index) => at(index, deepestM)));
  const x = scaleLinear([0, most], [0, inner]);
  const names = spacedOut(
    gases.map((_, index) => x(at(index, depthM))),
    NAME_GAP,
    inner - 10,
  );
  return (
    <Plate width={width} height={height} margin={COLUMN_MARGIN}>
      <rect
        x={x(RECOMMENDED_DENSITY_GL)}
        width={x(HIGHEST_DENSITY_GL) - x(RECOMMENDED_DENSITY_GL)}
        height={y(deepestM)}
        className={styles.overRecommended}
      />
      <rect
        x={x(HIGHEST_DENSITY_GL)}
        width={inner - x(HIGHEST_DENSITY_GL)}
        height={y(deepestM)}
        className={styles.overAdvised}
      />
      <DepthAxis y={y} width={inner} depthM={depthM} units={units} />
      {[RECOMMENDED_DENSITY_GL, HIGHEST_DENSITY_GL].map((mark, index) => (
        <g key={mark} transform={`translate(${x(mark)},0)`}>
          <line y1={-6} y2={y(deepestM)} className={index === 0 ? styles.working : styles.resting} />
          <text x={index === 0 ? -4 : 4} y={-12} textAnchor={index === 0 ? 'end' : 'start'} className={styles.limit}>
            {fixed(mark, 1)} {index === 0 ? 'recommended' : 'most'}
          </text>
        </g>
      ))}
      {gases.map((gas, index) => {
        const pointX = x(at(index, depthM));
        return (
          <g key={gasName(gas)}>
            <line x1={x(at(index, 0))} x2={x(at(index, deepestM))} y1={0} y2={y(deepestM)} className={styles.density} />
            <circle cx={pointX} cy={y(depthM)} r={5} className={styles.point} />
            <path d={`M${pointX},${y(depthM) + 6}L${names[index]!},${y(depthM) + 14}`} className={styles.lead} />
            <text x={names[index]!} y={y(depthM) + 27} textAnchor="middle" className={styles.value}>
              {gasName(gas)}
            </text>
          </g>
        );
      })}
    </Plate>
  );
}

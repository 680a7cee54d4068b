import { memo, useMemo } from 'react';
import { sayDepth } from '@/lib/quantity/depth';
import { printHours } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Scene } from '../scene';
import { Levels } from '../axes/Levels';
import { Minutes } from '../axes/TimeAxis';
import { ceilingEdges, divePath } from './dive-path';
import { depthTicks, type ProfileScales } from './profile-scales';
import { thinned } from '../axes/series-path';
import styles from '../pictures.module.css';

/** What of a profile stays still while the time cursor moves: axes, the roof of the ceiling, the dive itself. */
export const ProfileGround = memo(function ProfileGround({
  scene,
  scales,
  units,
  rock = 'rock',
  frame = 'dive-frame',
}: {
  scene: Scene;
  scales: ProfileScales;
  units: UnitSystem;
  /** Names of the hatching and of the edge, which the plate defines. */
  rock?: string;
  frame?: string;
}) {
  const { timeline, figures } = scene;
  const { inner, x, y } = scales;
  const paths = useMemo(() => {
    const some = thinned(timeline.length, inner.width);
    const ceiling = ceilingEdges(timeline, figures.ceilingM, some, { x, y });
    return {
      roof: ceiling.map(({ startX, path }) => `${path}V0H${startX.toFixed(1)}Z`).join(''),
      edge: ceiling.map(({ path }) => path).join(''),
      low: ceilingEdges(timeline, figures.ceilingAtLowM, some, { x, y })
        .map(({ path }) => path)
        .join(''),
      dive: divePath(timeline, { x, y }),
    };
  }, [timeline, figures, inner.width, x, y]);
  const { gradientFactors } = figures.limits;

  return (
    <>
      <ProfileAxes scales={scales} units={units} />
      <g clipPath={`url(#${frame})`}>
        <path d={paths.roof} fill={`url(#${rock})`} />
        <path d={paths.edge} className={styles.ceiling} />
        {gradientFactors.low < gradientFactors.high && <path d={paths.low} className={styles.ceilingLow} />}
        <path d={paths.dive} className={styles.profile} />
        {x.breaks.map((gap) => (
          <g key={gap.startS} transform={`translate(${(x(gap.startS) + x(gap.endS)) / 2},0)`} className={styles.break}>
            <path d="M-7,-9l4,18M1,-9l4,18" />
            <text y={24} textAnchor="middle">
              {printHours(gap.endS - gap.startS)}
            </text>
          </g>
        ))}
      </g>
    </>
  );
});

/** Kept apart: a drag holds the scales still while the dive changes. */
const ProfileAxes = memo(function ProfileAxes({
  scales: { inner, x, y, deepestM },
  units,
}: {
  scales: ProfileScales;
  units: UnitSystem;
}) {
  return (
    <>
      <Levels
        width={inner.width}
        levels={depthTicks(deepestM, units).map((depthM) => ({
          y: y(depthM),
          text: sayDepth(depthM, units),
          surface: depthM === 0,
        }))}
      />
      <Minutes x={x} width={inner.width} y={inner.height} />
    </>
  );
});

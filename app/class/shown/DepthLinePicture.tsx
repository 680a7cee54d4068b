import type { DepthLine } from '@/lib/class/ask';
import { printClock } from '@/lib/quantity/duration';
import { sayDepth } from '@/lib/quantity/depth';
import { usePreferences } from '../../parts/preferences';
import room from '../../parts/drawn-room.module.css';
import spread from '../../parts/spread/spread.module.css';
import styles from './shown.module.css';

const BOX = { width: 720, height: 220, left: 84, right: 40, top: 16, foot: 36 };

/** The depth of a dive over its time and nothing else: what the model makes of it is the question. */
export function DepthLinePicture({ points }: DepthLine) {
  const units = usePreferences((state) => state.units);
  const endS = Math.max(1, points.at(-1)![0]);
  const deepestM = Math.max(1, ...points.map(([, depthM]) => depthM));
  const x = (timeS: number) => BOX.left + (timeS / endS) * (BOX.width - BOX.left - BOX.right);
  const y = (depthM: number) => BOX.top + (depthM / deepestM) * (BOX.height - BOX.top - BOX.foot);
  const depth = sayDepth(deepestM, units);
  return (
    <figure className={`${room.room} ${spread.dots}`}>
      <svg viewBox={`0 0 ${BOX.width} ${BOX.height}`} aria-hidden="true">
        <path d={`M${BOX.left},${y(0)}H${BOX.width - BOX.right}`} className={spread.surface} />
        <path d={`M${BOX.left},${y(deepestM)}H${BOX.width - BOX.right}`} className={styles.grid} />
        <path
          d={points.map(([timeS, depthM], i) => `${i === 0 ? 'M' : 'L'}${x(timeS)},${y(depthM)}`).join('')}
          className={styles.line}
        />
        <text x={BOX.left - 8} y={y(0)} dy="0.32em" textAnchor="end">
          {sayDepth(0, units)}
        </text>
        <text x={BOX.left - 8} y={y(deepestM)} dy="0.32em" textAnchor="end">
          {depth}
        </text>
        <text x={BOX.left} y={BOX.height - 6}>
          0:00
        </text>
        <text x={x(endS)} y={BOX.height - 6} textAnchor="end">
          {printClock(endS)}
        </text>
      </svg>
      <figcaption className="spoken">
        The depth of the dive: to {depth}, over {printClock(endS)}.
      </figcaption>
    </figure>
  );
}

'use client';

import { scaleLinear } from 'd3';
import type { AscentPlan } from '@/lib/exposure/ascent-plan';
import { sayDepth } from '@/lib/quantity/depth';
import { usePreferences } from '../../parts/preferences';
import { usePictureScale } from '../picture-scale';
import { depthTicks } from '../profile/profile-scales';
import { Levels } from '../axes/Levels';
import { Plate } from '../axes/Plate';
import { spacedOut } from '../axes/spaced-out';
import { useWidth } from '../../parts/use-width';
import shared from '../pictures.module.css';
import frame from '../frame.module.css';
import styles from './ascents.module.css';

const MARGIN = { top: 30, right: 18, bottom: 28, left: 52 };
const LETTER = 7.4;
const GAP = 12;
const SAME_END = 6;
const HEIGHT = 280;

/** An ascent and what it is called at its end. */
interface NamedAscent {
  readonly title: string;
  readonly plan: AscentPlan;
}

/** Ascents over each other, each from the moment it begins; the one at `chosen` is drawn strongest. */
export function AscentsPicture({ ascents, chosen }: { ascents: readonly NamedAscent[]; chosen: number }) {
  const plans = ascents.map(({ plan }) => plan);
  const { ref, width: given } = useWidth<HTMLDivElement>(760);
  const width = Math.round(given / usePictureScale());
  const units = usePreferences((state) => state.units);
  const inner = { width: width - MARGIN.left - MARGIN.right, height: HEIGHT - MARGIN.top - MARGIN.bottom };
  const paths = plans.map(pointsOf);
  const deepestM = Math.max(6, ...plans.map(({ depthM }) => depthM));
  const longestMin = Math.max(1, ...paths.map((points) => points.at(-1)!.minutes));
  const x = scaleLinear([0, longestMin * 1.02], [0, inner.width]);
  const y = scaleLinear([0, deepestM * 1.05], [0, inner.height]);
  // Names end where their lines do. Ends a few pixels apart count as one, so that their names stay in order.
  const ends = spacedOut(
    paths.map((points) => Math.round(x(points.at(-1)!.minutes) / SAME_END) * SAME_END),
    Math.max(...ascents.map(({ title }) => title.length)) * LETTER + GAP,
    inner.width,
  );
  const order = plans.map((_, index) => index).sort((one, other) => Number(one === chosen) - Number(other === chosen));
  return (
    <div ref={ref} className={frame.ownHeight}>
      <Plate width={width} height={HEIGHT} margin={MARGIN}>
        <Levels
          width={inner.width}
          levels={depthTicks(deepestM, units).map((depthM) => ({
            y: y(depthM),
            text: sayDepth(depthM, units),
            surface: depthM === 0,
          }))}
        />
        {x.ticks(width < 560 ? 4 : 8).map((minutes) => (
          <text key={minutes} x={x(minutes)} y={inner.height + 20} className={shared.axis} textAnchor="middle">
            {minutes} min
          </text>
        ))}
        {order.map((index) => (
          <g key={index}>
            <path
              d={`M${paths[index]!.map(({ minutes, depthM }) => `${x(minutes).toFixed(1)},${y(depthM).toFixed(1)}`).join('L')}`}
              className={index === chosen ? styles.ascentChosen : styles.ascent}
            />
            <text
              x={ends[index]!.toFixed(1)}
              y={-10}
              textAnchor="end"
              className={index === chosen ? styles.endChosen : styles.end}
            >
              {ascents[index]!.title}
            </text>
          </g>
        ))}
      </Plate>
    </div>
  );
}

/** Depth at the corners of an ascent, with the minutes since it began. */
function pointsOf({ depthM, schedule }: AscentPlan): { minutes: number; depthM: number }[] {
  const points = [{ minutes: 0, depthM }];
  for (const part of schedule.parts) points.push({ minutes: points.at(-1)!.minutes + part.minutes, depthM: part.toM });
  return points;
}

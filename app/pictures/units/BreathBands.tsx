import { sampleAt } from '@/lib/dive/timeline';
import { heldBreathRatio, type HeldBreath } from '@/lib/rules/body/lungs';
import { tenth } from '../axes/time-columns';
import type { TimeScale } from '../axes/time-scale';
import type { Scene } from '../scene';
import styles from './ways-up.module.css';

/** Room that a figure needs, in its band or beside it. */
const FIGURE = 50;
const POINTS = 24;

interface Breaths {
  breaths: readonly HeldBreath[];
  x: TimeScale;
  body: number;
}

/** Held breaths as bands that widen: as high at each moment as the gas would be large. */
export function BreathBands({ breaths, scene: { timeline }, x, body }: Breaths & { scene: Pick<Scene, 'timeline'> }) {
  const { surfaceBar, barPerMetre } = timeline;
  const barAt = (depthM: number) => surfaceBar + depthM * barPerMetre;
  const most = breaths.reduce((largest, { ratio }) => Math.max(largest, ratio), 1);
  const middle = body / 2;
  const half = (ratio: number) => ((ratio / most) * (body - 6)) / 2;
  return breaths.map(({ startS, endS, fromM }) => {
    const times = Array.from({ length: POINTS + 1 }, (_, i) => startS + ((endS - startS) * i) / POINTS);
    const edge = times.map((timeS) => ({
      x: tenth(x(timeS)),
      half: half(heldBreathRatio(barAt(fromM), timeline.ambientBar[sampleAt(timeline, timeS)]!)),
    }));
    const upper = edge.map((at) => `${at.x},${tenth(middle - at.half)}`);
    const lower = edge.reverse().map((at) => `${at.x},${tenth(middle + at.half)}`);
    return <path key={startS} d={`M${[...upper, ...lower].join('L')}Z`} className={styles.breath} />;
  });
}

/** How many times its volume each breath would have, in figures. */
export function BreathFigures({ breaths, x, body, width }: Breaths & { width: number }) {
  const places = figurePlaces(breaths, x, width);
  return breaths.map(({ startS, ratio }, index) => {
    const place = places[index];
    return (
      place && (
        <text
          key={startS}
          x={tenth(place.endX)}
          y={body / 2}
          dy="0.34em"
          className={place.inside ? styles.grownInside : styles.grown}
        >
          × {ratio.toFixed(2)}
        </text>
      )
    );
  });
}

/** Where the figures of bands end: in a band that is wide enough, else before it or after it; the largest are placed first, and none over another band. */
function figurePlaces(breaths: readonly HeldBreath[], x: (timeS: number) => number, width: number) {
  const taken = breaths.map(({ startS, endS }) => ({ from: x(startS), to: x(endS) }));
  const places: ({ readonly endX: number; readonly inside: boolean } | undefined)[] = [];
  const largestFirst = breaths
    .map((_, index) => index)
    .sort((one, other) => breaths[other]!.ratio - breaths[one]!.ratio);
  for (const index of largestFirst) {
    const { from, to } = taken[index]!;
    if (to - from >= 1.5 * FIGURE) places[index] = { endX: to - 6, inside: true };
    else {
      const endX = [from - 6, to + 6 + FIGURE].find(
        (end) =>
          end <= width &&
          end >= FIGURE &&
          taken.every((other) => other.to <= end - FIGURE - 4 || other.from >= end + 2),
      );
      if (endX === undefined) continue;
      places[index] = { endX, inside: false };
      taken.push({ from: endX - FIGURE, to: endX });
    }
  }
  return places;
}

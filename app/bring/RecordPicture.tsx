'use client';

import { line, scaleLinear } from 'd3';
import { printClock } from '@/lib/quantity/duration';
import { printDepth } from '@/lib/quantity/depth';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { atMost } from '@/lib/quantity/number';
import type { Trace } from '@/lib/files/records/thin-samples';
import { ChartFrame } from '../parts/ChartFrame';
import { usePreferences } from '../parts/preferences';
import type { Made, MendedDive } from './brought';
import { useWidth } from '../pictures/hand/use-width';
import { depthTicks } from '../pictures/profile/profile-scales';
import { TimeFoot } from './TimeFoot';
import styles from './bring.module.css';

const HEIGHT = 260;
const MARGIN = { top: 14, right: 12, bottom: 34, left: 56 };
const MOST_ROWS = 200;

/** The record as a pale band of dots, and the straight stretches the dive is made of as a line over it. */
export function RecordPicture({
  dive,
  line: kept,
  made,
}: {
  dive: MendedDive;
  line: Trace | undefined;
  made: Made | undefined;
}) {
  const units = usePreferences((preferences) => preferences.units);
  const { ref, width } = useWidth<HTMLDivElement>(720);
  const { timeS, valueOf } = dive.recorded;
  const endS = timeS.at(-1) ?? 60;
  const deepestM = Math.max(3, ...valueOf);
  const x = scaleLinear([0, endS], [MARGIN.left, width - MARGIN.right]);
  const y = scaleLinear([Math.min(0, ...valueOf), deepestM * 1.06], [MARGIN.top, HEIGHT - MARGIN.bottom]);
  const draw = line<number>();
  const path = ({ timeS: times, valueOf: values }: Trace) =>
    draw.x((i) => x(times[i]!)).y((i) => y(values[i]!))(Array.from(times.keys())) ?? '';
  const points = kept ? Array.from(kept.timeS.keys()).slice(0, MOST_ROWS) : [];
  return (
    <ChartFrame
      title={dive.name}
      headingLevel={3}
      sentence={sentenceOf(dive, made, units)}
      rows={points}
      columns={[
        { heading: 'Time', cell: (i) => printClock(kept!.timeS[i]!) },
        { heading: 'Depth', numeric: true, cell: (i) => printDepth(kept!.valueOf[i]!, units) },
      ]}
    >
      <div ref={ref}>
        <svg
          viewBox={`0 0 ${width} ${HEIGHT}`}
          width={width}
          height={HEIGHT}
          className={styles.picture}
          aria-hidden="true"
        >
          {depthTicks(deepestM, units).map((depthM) => (
            <g key={depthM}>
              <path
                className={depthM === 0 ? styles.surface : styles.grid}
                d={`M${MARGIN.left} ${y(depthM)}H${width - MARGIN.right}`}
              />
              <text x={MARGIN.left - 8} y={y(depthM)} className={styles.sideLabel}>
                {units === 'metric' ? `${depthM} m` : `${Math.round(depthM / METRES_PER_FOOT)} ft`}
              </text>
            </g>
          ))}
          <TimeFoot endS={endS} x={x} y={HEIGHT - MARGIN.bottom} />
          <path className={styles.recorded} d={path(dive.recorded)} />
          {kept && <path className={styles.kept} d={path(kept)} />}
        </svg>
        <p className={styles.key} aria-hidden="true">
          <span className={styles.keyRecorded} /> as recorded
          {kept && (
            <>
              <span className={styles.keyKept} /> as the desk will have it
            </>
          )}
        </p>
      </div>
    </ChartFrame>
  );
}

function sentenceOf(dive: MendedDive, made: Made | undefined, units: 'metric' | 'imperial'): string {
  const samples = `${dive.samples.toLocaleString('en-GB')} samples`;
  if (!made) return `${samples}, as recorded. No dive can be made of them yet.`;
  const exact = made.depthErrorM < 1e-6 && made.tissueErrorBar < 1e-9;
  const how = exact
    ? 'They lie on straight lines, so nothing is lost.'
    : `At no sample does the depth differ by more than ${units === 'metric' ? `${atMost(made.depthErrorM, 2)} m` : `${atMost(made.depthErrorM / METRES_PER_FOOT, 1)} ft`}, nor any compartment’s inert gas by more than ${atMost(made.tissueErrorBar * 1000, 1)} mbar.`;
  return `${samples} are brought as ${made.steps.toLocaleString('en-GB')} steps${made.lines.length > 1 ? ' for all dives together' : ''}. ${how}`;
}

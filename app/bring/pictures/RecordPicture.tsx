'use client';

import { line } from 'd3';
import { useMemo } from 'react';
import { printClock } from '@/lib/quantity/duration';
import { printDepth, sayDepth } from '@/lib/quantity/depth';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { atMost } from '@/lib/quantity/number';
import type { Trace } from '@/lib/files/records/thin-samples';
import { ChartFrame } from '../../parts/ChartFrame';
import { usePreferences } from '../../parts/preferences';
import type { Made, MendedDive } from '../brought';
import { FaultMark } from './FaultMark';
import { Levels } from '../../pictures/axes/Levels';
import { markPath } from '../../pictures/axes/mark-shapes';
import { recordFrame } from '../../pictures/axes/time-picture';
import { TimeGround } from '../../pictures/axes/TimeGround';
import { TimePlot } from '../../pictures/axes/TimePlot';
import { useWidth } from '../../parts/use-width';
import { depthTicks } from '../../pictures/profile/profile-scales';
import { straightScale } from '../../parts/straight-scale';
import styles from './record-picture.module.css';

const HEIGHT = 260;
const RIM = { top: 26, bottom: 34 };
/** Numbers of faults nearer to one another than this would lie over each other. */
const NUMBER_GAP = 16;

/** What is wrong at a place of the record, by the number its kind has in the list. */
export interface MarkedFault {
  readonly timeS: number;
  readonly depthM: number;
  readonly number: number;
  readonly mended: boolean;
}

const MOST_ROWS = 200;

/** The record as rings, and the straight stretches the dive is made of as a line over it. */
export function RecordPicture({
  dive,
  line: kept,
  made,
  faults,
}: {
  dive: MendedDive;
  line: Trace | undefined;
  made: Made | undefined;
  faults: readonly MarkedFault[];
}) {
  const units = usePreferences((preferences) => preferences.units);
  const { ref, width } = useWidth<HTMLDivElement>(720);
  const { timeS, valueOf } = dive.recorded;
  const frame = useMemo(() => recordFrame(timeS, width, HEIGHT, RIM), [timeS, width]);
  const deepestM = Math.max(3, ...valueOf);
  const { x, inner } = frame;
  const y = straightScale([Math.min(0, ...valueOf), deepestM * 1.06], [0, inner.height]);
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
        <div className={styles.canvas}>
          <TimePlot
            frame={frame}
            width={width}
            height={HEIGHT}
            tip={({ sample }) => ({ lines: [printDepth(valueOf[sample]!, units)] })}
          >
            <TimeGround frame={frame}>
              <Levels
                width={inner.width}
                levels={depthTicks(deepestM, units).map((depthM) => ({
                  y: y(depthM),
                  text: sayDepth(depthM, units),
                  surface: depthM === 0,
                }))}
              />
              <path className={styles.recorded} d={rings(dive.recorded, x, y)} />
              {kept && <path className={styles.kept} d={path(kept)} />}
              <Faults faults={faults} x={x} y={y} inner={inner} />
            </TimeGround>
          </TimePlot>
        </div>
        <p className={styles.key} aria-hidden="true">
          <span>
            <i className={styles.keyRecorded} /> as recorded
          </span>
          {kept && (
            <span>
              <i /> as the desk will have it
            </span>
          )}
          {faults.length > 0 && (
            <>
              <span>✕ a fault by its number in the list</span>
              <span>○ mended</span>
            </>
          )}
        </p>
      </div>
    </ChartFrame>
  );
}

/** A cross at each fault, a ring once it is mended, under its number. */
function Faults({
  faults,
  x,
  y,
  inner,
}: {
  faults: readonly MarkedFault[];
  x: (timeS: number) => number;
  y: (depthM: number) => number;
  inner: { readonly width: number; readonly height: number };
}) {
  let lastX = -Infinity;
  return faults.map(({ timeS, depthM, number, mended }, index) => {
    const atX = Math.min(Math.max(0, x(timeS)), inner.width);
    const atY = Math.min(Math.max(0, y(depthM || 0)), inner.height);
    const numbered = atX - lastX >= NUMBER_GAP;
    if (numbered) lastX = atX;
    return (
      <g key={index}>
        {numbered && (
          <>
            <path className={styles.faultTie} d={`M${atX.toFixed(1)},-8V${atY.toFixed(1)}`} />
            <text x={atX.toFixed(1)} y={-12} className={styles.faultNumber}>
              {number}
            </text>
          </>
        )}
        <FaultMark x={atX} y={atY} mended={mended} />
      </g>
    );
  });
}

/** Closer together, rings would be a band. */
const RING_GAP = 5;

/** The record as rings, as near to one another as can be told apart. */
function rings({ timeS, valueOf }: Trace, x: (timeS: number) => number, y: (depthM: number) => number): string {
  let path = '';
  let lastX = -Infinity;
  let lastY = -Infinity;
  for (let i = 0; i < timeS.length; i += 1) {
    const [atX, atY] = [x(timeS[i]!), y(valueOf[i]!)];
    if (Math.hypot(atX - lastX, atY - lastY) < RING_GAP) continue;
    path += markPath('round', atX, atY, 2);
    lastX = atX;
    lastY = atY;
  }
  return path;
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

'use client';

import { scalePow, type ScalePower } from 'd3';
import { memo, useId, useMemo } from 'react';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { printClock } from '@/lib/quantity/duration';
import { printAs } from '@/lib/sayings/measures';
import type { Scene } from '../scene';
import { LeaderStrip, STRIP_HEIGHT } from '../axes/LeaderStrip';
import type { PictureProps } from '../picture-props';
import { PointerTip } from '../hand/PointerTip';
import { Rock } from '../axes/Rock';
import { columnPath, columnRuns } from '../axes/time-columns';
import { TimeAxis } from '../axes/TimeAxis';
import { TimeCursor } from '../axes/TimeCursor';
import { columnAt, timePicture, type TimePicture } from '../axes/time-picture';
import { usePointed } from '../hand/use-pointed';
import shared from '../pictures.module.css';
import styles from './no-stop.module.css';

const STRIP = STRIP_HEIGHT + 3;
const RIM = { top: 16, bottom: 28 + STRIP };
const TICKS_MIN = [0, 5, 10, 20, 40, 60, NO_STOP_CAP_MIN];
const ROOM_FOR_WORDS = 90;

interface NoStopFrame extends TimePicture {
  /** Minutes, stretched near none left, where they matter. */
  readonly y: ScalePower<number, number>;
}

/** Minutes left without a stop, over time; where the model asks for a stop the sheet is rock. */
export function NoStopPicture({ scene, sample, cursorS, width, height, units, onCursor, view }: PictureProps) {
  const frame = useMemo((): NoStopFrame => {
    const picture = timePicture(scene, width, height, RIM, view);
    return { ...picture, y: scalePow([0, NO_STOP_CAP_MIN], [picture.inner.height, 0]).exponent(0.5) };
  }, [scene, width, height, view]);
  const { margin, inner, x, y } = frame;
  const { pointed, handlers } = usePointed(margin, width, (at) => onCursor(x.invert(at.x)));
  const { noStopMin, noStopLeader, ceilingM } = scene.figures;
  const told =
    pointed && pointed.x >= 0 && pointed.x <= inner.width ? frame.columns[columnAt(frame, pointed.x)] : undefined;
  const cursorX = x(cursorS);
  const left = cursorX > inner.width * 0.75;

  return (
    <>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        className={shared.picture}
        aria-hidden="true"
        {...handlers}
      >
        <rect width={width} height={height} className={shared.hit} />
        <g transform={`translate(${margin.left},${margin.top})`}>
          <Ground scene={scene} frame={frame} />
          <TimeCursor x={cursorX} width={inner.width} height={inner.height + STRIP} />
          {told !== undefined && <path d={`M${pointed!.x},0V${inner.height + STRIP}`} className={shared.pointed} />}
          {cursorX >= 0 && cursorX <= inner.width && (
            <g className={styles.value}>
              <circle cx={cursorX} cy={y(capped(noStopMin[sample]!))} r={5} />
              <text
                x={cursorX + (left ? -10 : 10)}
                y={Math.max(12, y(capped(noStopMin[sample]!)) - 12)}
                textAnchor={left ? 'end' : 'start'}
              >
                {ceilingM[sample]! > 0 ? 'none left' : `${printAs('noStopMin', noStopMin[sample]!, units)} left`}
              </text>
            </g>
          )}
        </g>
      </svg>
      {told !== undefined && (
        <PointerTip
          x={margin.left + pointed!.x}
          y={margin.top + inner.height / 2}
          width={width}
          height={height}
          title={printClock(x.invert(pointed!.x))}
        >
          <span>
            {ceilingM[told]! > 0
              ? `none left; a ceiling at ${printAs('ceilingM', ceilingM[told]!, units)}`
              : `${printAs('noStopMin', noStopMin[told]!, units)} without a stop`}
          </span>
          <span>
            {noStopLeader[told] ? `compartment ${noStopLeader[told]} sets it` : 'no compartment would end it here'}
          </span>
        </PointerTip>
      )}
    </>
  );
}

const capped = (minutes: number) => Math.min(minutes, NO_STOP_CAP_MIN);

const Ground = memo(function Ground({ scene, frame }: { scene: Scene; frame: NoStopFrame }) {
  const id = useId();
  const { inner, x, y, columns } = frame;
  const { timeline, figures } = scene;
  const path = columnPath(
    columns,
    (sample) => x(timeline.timeS[sample]!),
    (column) => y(capped(figures.noStopMin[columns[column]!]!)),
  );
  const asked = columnRuns(Array.from(columns, (sample) => (figures.ceilingM[sample]! > 0 ? 1 : 0)));
  const leaders = useMemo(
    () => Uint8Array.from(columns, (sample) => figures.noStopLeader[sample]!),
    [columns, figures],
  );
  return (
    <>
      <defs>
        <Rock id={`${id}rock`} />
        <clipPath id={`${id}frame`}>
          <rect y={-3} width={inner.width} height={inner.height + 6} />
        </clipPath>
      </defs>
      {TICKS_MIN.map((minutes) => (
        <g key={minutes} transform={`translate(0,${y(minutes)})`}>
          <line x2={inner.width} className={shared.grid} />
          <text x={-8} dy="0.32em" className={shared.axis} textAnchor="end">
            {minutes === NO_STOP_CAP_MIN ? `>${minutes}` : minutes}
          </text>
        </g>
      ))}
      {asked.map(({ from, to }, index) => (
        <g key={index} transform={`translate(${from},0)`}>
          <rect width={to - from} height={inner.height} fill={`url(#${id}rock)`} />
          <path d={`M0,0V${inner.height}M${to - from},0V${inner.height}`} className={styles.edge} />
          {to - from >= ROOM_FOR_WORDS && (
            <text x={(to - from) / 2} y={18} textAnchor="middle" className={styles.asked}>
              stop required
            </text>
          )}
        </g>
      ))}
      <path d={path} className={styles.left} clipPath={`url(#${id}frame)`} />
      <path d={`M0,${inner.height}H${inner.width}`} className={shared.surface} />
      <LeaderStrip name="set by" leaders={leaders} y={inner.height + 3} />
      <TimeAxis x={x} width={inner.width} y={inner.height + STRIP} />
    </>
  );
});

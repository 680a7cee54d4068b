'use client';

import { scalePow, type ScalePower } from 'd3';
import { memo, useId, useMemo } from 'react';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { printAs } from '@/lib/sayings/measures';
import { sayLeft } from '@/lib/sayings/stop-state';
import type { Scene } from '../scene';
import { LeaderStrip, STRIP_HEIGHT } from '../axes/LeaderStrip';
import type { PictureProps } from '../picture-props';
import { Rock } from '../axes/Rock';
import { Clipped } from '../axes/Clipped';
import { Levels } from '../axes/Levels';
import { columnPath, columnRuns } from '../axes/time-columns';
import { TimeGround } from '../axes/TimeGround';
import { timePicture, type TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import styles from './no-stop.module.css';

const STRIP = STRIP_HEIGHT + 3;
const RIM = { top: 20, bottom: 28 + STRIP };
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
  const { inner, y } = frame;
  const { noStopMin, noStopLeader, ceilingM } = scene.figures;

  return (
    <TimePlot
      {...{ frame, width, height, cursorS, onCursor }}
      atCursor={(cursorX) => {
        const left = cursorX > inner.width * 0.75;
        const at = y(capped(noStopMin[sample]!));
        return (
          <g className={styles.value}>
            <circle cx={cursorX} cy={at} r={5} />
            <text x={cursorX + (left ? -10 : 10)} y={Math.max(12, at - 12)} textAnchor={left ? 'end' : 'start'}>
              {leftWords(ceilingM[sample]!, noStopMin[sample]!, units)}
            </text>
          </g>
        );
      }}
      tip={({ sample: at }) => ({
        lines: [
          ceilingM[at]! > 0
            ? `none left; a ceiling at ${printAs('ceilingM', ceilingM[at]!, units)}`
            : `${sayLeft(noStopMin[at]!, units)} without a stop`,
          noStopLeader[at] ? `compartment ${noStopLeader[at]} sets it` : 'no compartment would end it here',
        ],
      })}
      words={<Words scene={scene} frame={frame} />}
    >
      <Ground scene={scene} frame={frame} />
    </TimePlot>
  );
}

/** What is left in words. */
function leftWords(ceilingM: number, minutes: number, units: PictureProps['units']): string {
  return ceilingM > 0 ? 'none left' : `${sayLeft(minutes, units)} left`;
}

const capped = (minutes: number) => Math.min(minutes, NO_STOP_CAP_MIN);

const Ground = memo(function Ground({ scene, frame }: { scene: Scene; frame: NoStopFrame }) {
  const id = useId();
  const { inner, x, y, columns } = frame;
  const { timeline, figures } = scene;
  // Beyond the cap nothing is drawn as a figure: the line is broken there and goes on along the top in dots.
  const runs = columnRuns(Array.from(columns, (sample) => (figures.noStopMin[sample]! > NO_STOP_CAP_MIN ? 2 : 1)));
  const stretches = (wanted: number) =>
    runs
      .filter(({ value }) => value === wanted)
      .map(({ from, to }) =>
        columnPath(
          columns.subarray(from, to),
          (sample) => x(timeline.timeS[sample]!),
          (column) => y(capped(figures.noStopMin[columns[from + column]!]!)),
        ),
      )
      .join('');
  const leaders = useMemo(
    () => Uint8Array.from(columns, (sample) => figures.noStopLeader[sample]!),
    [columns, figures],
  );
  return (
    <TimeGround frame={frame} below={STRIP}>
      <defs>
        <Rock id={`${id}rock`} />
      </defs>
      <Levels
        width={inner.width}
        levels={TICKS_MIN.map((minutes) => ({
          y: y(minutes),
          text: minutes === NO_STOP_CAP_MIN ? `>${minutes}` : `${minutes}`,
        }))}
      />
      {askedRuns(scene, frame).map(({ from, to }, index) => (
        <g key={index} transform={`translate(${from},0)`}>
          <rect width={to - from} height={inner.height} fill={`url(#${id}rock)`} />
          <path d={`M0,0V${inner.height}M${to - from},0V${inner.height}`} className={styles.edge} />
        </g>
      ))}
      <Clipped {...inner} above={3}>
        <path d={stretches(1)} className={styles.left} />
        <path d={stretches(2)} className={styles.beyond} />
      </Clipped>
      <LeaderStrip name="set by" leaders={leaders} y={inner.height + 3} />
    </TimeGround>
  );
});

const Words = memo(function Words({ scene, frame }: { scene: Scene; frame: NoStopFrame }) {
  return (
    <>
      <text x={0} y={-5} className={styles.scale}>
        min without a stop; stretched towards 0
      </text>
      {askedRuns(scene, frame).map(
        ({ from, to }, index) =>
          to - from >= ROOM_FOR_WORDS && (
            <text key={index} x={(from + to) / 2} y={18} textAnchor="middle" className={styles.asked}>
              stop required
            </text>
          ),
      )}
    </>
  );
});

/** The columns in which the model asks for a stop. */
const askedRuns = ({ figures }: Scene, { columns }: NoStopFrame) =>
  columnRuns(Array.from(columns, (sample) => (figures.ceilingM[sample]! > 0 ? 1 : 0)));

'use client';

import { scaleLinear, type ScaleLinear } from 'd3';
import { memo, useMemo } from 'react';
import { RESTING_PO2_BAR, WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { fixed } from '@/lib/quantity/number';
import { printPercent } from '@/lib/quantity/percent';
import type { Scene } from '../scene';
import type { PictureProps } from '../picture-props';
import { Clipped } from '../axes/Clipped';
import { DIVE_STRIP } from '../axes/DiveStrip';
import { Levels } from '../axes/Levels';
import { spacedOut } from '../axes/spaced-out';
import { columnPath } from '../axes/time-columns';
import { TimeGround } from '../axes/TimeGround';
import { timePicture, type TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import { oxygenOf } from '../scene-exposure';
import shared from '../pictures.module.css';
import styles from './exposure.module.css';

const TOP = 20;
const RIM = { top: TOP + DIVE_STRIP, bottom: 28 };
const GAP = 26;
const LIMITS = [WORKING_PO2_BAR, RESTING_PO2_BAR];

interface OxygenFrame extends TimePicture {
  /** Oxygen pressure in the upper half, bar. */
  readonly pressureY: ScaleLinear<number, number>;
  /** Fractions of the limits in the lower half. */
  readonly fractionY: ScaleLinear<number, number>;
}

/** Oxygen over the dive: the pressure breathed above, the fractions of the two limits used below. */
export function OxygenPicture({ scene, sample, cursorS, width, height, onCursor, view }: PictureProps) {
  const frame = useMemo((): OxygenFrame => {
    const picture = timePicture(scene, width, height, RIM, view);
    const { singleFraction, dailyFraction, pO2Bar } = oxygenOf(scene);
    const most = (values: Float64Array) => values.reduce((one, other) => Math.max(one, other), 0);
    const half = (picture.inner.height - GAP) / 2;
    const top = Math.max(1, most(singleFraction), most(dailyFraction));
    return {
      ...picture,
      pressureY: scaleLinear([0, Math.max(1.75, most(pO2Bar) * 1.05)], [half, 0]),
      fractionY: scaleLinear([0, top * 1.08], [picture.inner.height, half + GAP]),
    };
  }, [scene, width, height, view]);
  const { pressureY, fractionY } = frame;
  const oxygen = oxygenOf(scene);
  return (
    <TimePlot
      {...{ frame, width, height, cursorS, onCursor }}
      atCursor={(x) => (
        <>
          <circle cx={x} cy={pressureY(oxygen.pO2Bar[sample]!)} r={5} className={styles.point} />
          <circle cx={x} cy={fractionY(oxygen.singleFraction[sample]!)} r={5} className={styles.point} />
          <circle cx={x} cy={fractionY(oxygen.dailyFraction[sample]!)} r={5} className={styles.openPoint} />
        </>
      )}
      tip={({ sample: at }) => ({
        lines: [
          `oxygen at ${fixed(oxygen.pO2Bar[at]!, 2)} bar`,
          `single exposure ${printPercent(oxygen.singleFraction[at]!)}`,
          `24 hours ${printPercent(oxygen.dailyFraction[at]!)}`,
        ],
      })}
      words={
        <g className={styles.heading}>
          <text y={-8}>Oxygen pressure, bar</text>
          <text y={fractionY.range()[1]! - 7}>Part of each limit used</text>
        </g>
      }
    >
      <Ground scene={scene} frame={frame} />
    </TimePlot>
  );
}

const Ground = memo(function Ground({ scene, frame }: { scene: Scene; frame: OxygenFrame }) {
  const { inner, x, columns, pressureY, fractionY } = frame;
  const oxygen = oxygenOf(scene);
  const at = (sample: number) => x(scene.timeline.timeS[sample]!);
  const path = (values: Float64Array, y: ScaleLinear<number, number>) =>
    columnPath(columns, at, (column) => y(values[columns[column]!]!));
  // However low the picture is.
  const limitNames = spacedOut(LIMITS.map(pressureY), 14, pressureY(0));
  return (
    <TimeGround frame={frame} dive={scene}>
      <Levels width={inner.width} levels={[0, 0.5, 1].map((bar) => ({ y: pressureY(bar), text: fixed(bar, 1) }))} />
      <Levels
        width={inner.width}
        levels={fractionY
          .ticks(4)
          .filter((fraction) => fraction !== 1)
          .map((fraction) => ({ y: fractionY(fraction), text: printPercent(fraction) }))}
      />
      {LIMITS.map((bar, index) => (
        <g key={bar}>
          <path
            d={`M0,${pressureY(bar)}H${inner.width}`}
            className={index === 0 ? styles.dashedRule : styles.solidRule}
          />
          <text x={-8} y={limitNames[index]} dy="0.32em" textAnchor="end" className={styles.ruleLabel}>
            {bar}
          </text>
        </g>
      ))}
      <g transform={`translate(0,${fractionY(1)})`}>
        <line x2={inner.width} className={styles.solidRule} />
        <text x={-8} dy="0.32em" textAnchor="end" className={styles.ruleLabel}>
          100%
        </text>
      </g>
      <Clipped {...inner} above={TOP}>
        <path d={path(oxygen.pO2Bar, pressureY)} className={styles.main} />
        <path d={path(oxygen.singleFraction, fractionY)} className={styles.main} />
        <path d={path(oxygen.dailyFraction, fractionY)} className={styles.second} />
      </Clipped>
      <path d={`M0,${pressureY(0)}H${inner.width}`} className={shared.surface} />
    </TimeGround>
  );
});

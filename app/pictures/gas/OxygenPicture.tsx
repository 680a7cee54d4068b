'use client';

import { scaleLinear, type ScaleLinear } from 'd3';
import { memo, useId, useMemo } from 'react';
import { RESTING_PO2_BAR, WORKING_PO2_BAR } from '@/lib/physics/oxygen-limits';
import { printClock } from '@/lib/quantity/duration';
import { fixed } from '@/lib/quantity/number';
import { printPercent } from '@/lib/quantity/percent';
import type { Scene } from '../scene';
import type { PictureProps } from '../picture-props';
import { PointerTip } from '../hand/PointerTip';
import { columnPath } from '../axes/time-columns';
import { TimeAxis } from '../axes/TimeAxis';
import { TimeCursor } from '../axes/TimeCursor';
import { columnAt, timePicture, type TimePicture } from '../axes/time-picture';
import { usePointed } from '../hand/use-pointed';
import { DiveGhost } from './DiveGhost';
import { oxygenOf } from '../scene-exposure';
import shared from '../pictures.module.css';
import styles from './exposure.module.css';

const RIM = { top: 20, bottom: 28 };
const GAP = 26;

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
  const { margin, inner, x, pressureY, fractionY } = frame;
  const { pointed, handlers } = usePointed(margin, width, (at) => onCursor(x.invert(at.x)));
  const oxygen = oxygenOf(scene);
  const told =
    pointed && pointed.x >= 0 && pointed.x <= inner.width ? frame.columns[columnAt(frame, pointed.x)] : undefined;
  const cursorX = x(cursorS);
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
          <TimeCursor x={cursorX} width={inner.width} height={inner.height} />
          {cursorX >= 0 && cursorX <= inner.width && (
            <>
              <circle cx={cursorX} cy={pressureY(oxygen.pO2Bar[sample]!)} r={5} className={styles.point} />
              <circle cx={cursorX} cy={fractionY(oxygen.singleFraction[sample]!)} r={5} className={styles.point} />
              <circle cx={cursorX} cy={fractionY(oxygen.dailyFraction[sample]!)} r={5} className={styles.openPoint} />
            </>
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
          <span>oxygen at {fixed(oxygen.pO2Bar[told]!, 2)} bar</span>
          <span>single exposure {printPercent(oxygen.singleFraction[told]!)}</span>
          <span>24 hours {printPercent(oxygen.dailyFraction[told]!)}</span>
        </PointerTip>
      )}
    </>
  );
}

const Ground = memo(function Ground({ scene, frame }: { scene: Scene; frame: OxygenFrame }) {
  const id = useId();
  const { inner, x, columns, pressureY, fractionY } = frame;
  const oxygen = oxygenOf(scene);
  const at = (sample: number) => x(scene.timeline.timeS[sample]!);
  const path = (values: Float64Array, y: ScaleLinear<number, number>) =>
    columnPath(columns, at, (column) => y(values[columns[column]!]!));
  return (
    <>
      <clipPath id={id}>
        <rect y={-RIM.top} width={inner.width} height={inner.height + RIM.top} />
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <DiveGhost scene={scene} frame={frame} />
      </g>
      <Levels y={pressureY} levels={[0, 0.5, 1]} width={inner.width} say={(bar) => `${fixed(bar, 1)}`} />
      <Levels
        y={fractionY}
        levels={fractionY.ticks(4).filter((fraction) => fraction !== 1)}
        width={inner.width}
        say={printPercent}
      />
      <text y={-8} className={styles.heading}>
        Oxygen pressure, bar
      </text>
      <text y={fractionY.range()[1]! - 7} className={styles.heading}>
        Part of each limit used
      </text>
      {[WORKING_PO2_BAR, RESTING_PO2_BAR].map((bar, index) => (
        <g key={bar} transform={`translate(0,${pressureY(bar)})`}>
          <line x2={inner.width} className={index === 0 ? styles.dashedRule : styles.solidRule} />
          <text x={-8} dy="0.32em" textAnchor="end" className={styles.ruleLabel}>
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
      <g clipPath={`url(#${id})`}>
        <path d={path(oxygen.pO2Bar, pressureY)} className={styles.main} />
        <path d={path(oxygen.singleFraction, fractionY)} className={styles.main} />
        <path d={path(oxygen.dailyFraction, fractionY)} className={styles.second} />
      </g>
      <path d={`M0,${inner.height}H${inner.width}M0,${pressureY(0)}H${inner.width}`} className={shared.surface} />
      <TimeAxis x={x} width={inner.width} y={inner.height} />
    </>
  );
});

function Levels({
  y,
  levels,
  width,
  say,
}: {
  y: ScaleLinear<number, number>;
  levels: readonly number[];
  width: number;
  say: (value: number) => string;
}) {
  return (
    <>
      {levels.map((level) => (
        <g key={level} transform={`translate(0,${y(level)})`}>
          <line x2={width} className={shared.grid} />
          <text x={-8} dy="0.32em" className={shared.axis} textAnchor="end">
            {say(level)}
          </text>
        </g>
      ))}
    </>
  );
}

'use client';

import { scaleLinear, type ScaleLinear } from 'd3';
import { memo, useId, useMemo } from 'react';
import { breathedAt } from '@/lib/ascent/breathed';
import { gasAt } from '@/lib/dive/timeline';
import type { IsobaricSwitch } from '@/lib/exposure/isobaric-switch';
import { gasName } from '@/lib/physics/gas';
import { printClock } from '@/lib/quantity/duration';
import { fixed } from '@/lib/quantity/number';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import type { Scene } from '../scene';
import type { PictureProps } from '../picture-props';
import { PointerTip } from '../hand/PointerTip';
import { columnPath } from '../axes/time-columns';
import { TimeAxis } from '../axes/TimeAxis';
import { TimeCursor } from '../axes/TimeCursor';
import { columnAt, timePicture, type TimePicture } from '../axes/time-picture';
import { usePointed } from '../hand/use-pointed';
import { DiveGhost } from './DiveGhost';
import shared from '../pictures.module.css';
import styles from './exposure.module.css';

const RIM = { top: 36, bottom: 28 };

interface HeliumPictureProps extends PictureProps {
  /** From 0. */
  compartment: number;
  switches: readonly IsobaricSwitch[];
}

interface HeliumFrame extends TimePicture {
  readonly y: ScaleLinear<number, number>;
}

/** One compartment's nitrogen and helium over the dive, each following what is breathed at its own speed. */
export function HeliumPicture({
  scene,
  sample,
  cursorS,
  width,
  height,
  onCursor,
  view,
  compartment,
  switches,
}: HeliumPictureProps) {
  const frame = useMemo((): HeliumFrame => {
    const picture = timePicture(scene, width, height, RIM, view);
    const { timeline } = scene;
    let most = 1;
    for (const sampleOf of picture.columns) {
      const { nitrogenBar, heliumBar } = breathedAt(
        timeline,
        gasAt(timeline, sampleOf),
        timeline.ambientBar[sampleOf]!,
      );
      most = Math.max(
        most,
        nitrogenBar,
        heliumBar,
        timeline.nitrogenBar[sampleOf * COMPARTMENTS + compartment]!,
        timeline.heliumBar[sampleOf * COMPARTMENTS + compartment]!,
      );
    }
    return { ...picture, y: scaleLinear([0, most * 1.06], [picture.inner.height, 0]) };
  }, [scene, width, height, view, compartment]);
  const { margin, inner, x, y } = frame;
  const { pointed, handlers } = usePointed(margin, width, (at) => onCursor(x.invert(at.x)));
  const { nitrogenBar, heliumBar } = scene.timeline;
  const at = (sampleOf: number) => sampleOf * COMPARTMENTS + compartment;
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
          <Ground scene={scene} frame={frame} compartment={compartment} />
          {switches.map((one) => (
            <g key={one.timeS} transform={`translate(${x(one.timeS)},0)`}>
              <line y1={-4} y2={inner.height} className={styles.dashedRule} />
              <path d="M0,-13L6,-5H-6Z" className={styles.point} />
              <text x={9} y={-5} className={styles.name}>
                to {gasName(one.to)}
              </text>
            </g>
          ))}
          <TimeCursor x={cursorX} width={inner.width} height={inner.height} />
          {cursorX >= 0 && cursorX <= inner.width && (
            <>
              <circle cx={cursorX} cy={y(nitrogenBar[at(sample)]!)} r={5} className={styles.point} />
              <circle cx={cursorX} cy={y(heliumBar[at(sample)]!)} r={5} className={styles.openPoint} />
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
          <span>nitrogen {fixed(nitrogenBar[at(told)]!, 2)} bar</span>
          <span>helium {fixed(heliumBar[at(told)]!, 2)} bar</span>
          <span>together {fixed(nitrogenBar[at(told)]! + heliumBar[at(told)]!, 2)} bar</span>
        </PointerTip>
      )}
    </>
  );
}

const Ground = memo(function Ground({
  scene,
  frame,
  compartment,
}: {
  scene: Scene;
  frame: HeliumFrame;
  compartment: number;
}) {
  const id = useId();
  const { inner, x, y, columns } = frame;
  const { timeline } = scene;
  const at = (sample: number) => x(timeline.timeS[sample]!);
  const path = (value: (sample: number) => number) => columnPath(columns, at, (column) => y(value(columns[column]!)));
  const breathed = (sample: number) => breathedAt(timeline, gasAt(timeline, sample), timeline.ambientBar[sample]!);
  return (
    <>
      <clipPath id={id}>
        <rect y={-RIM.top} width={inner.width} height={inner.height + RIM.top} />
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <DiveGhost scene={scene} frame={frame} />
      </g>
      {y.ticks(5).map((bar) => (
        <g key={bar} transform={`translate(0,${y(bar)})`}>
          <line x2={inner.width} className={shared.grid} />
          <text x={-8} dy="0.32em" className={shared.axis} textAnchor="end">
            {fixed(bar, 1)}
          </text>
        </g>
      ))}
      <text y={-22} className={styles.heading}>
        Pressure of each gas, bar
      </text>
      <g clipPath={`url(#${id})`}>
        <path d={path((sample) => breathed(sample).nitrogenBar)} className={styles.breathedMain} />
        <path d={path((sample) => breathed(sample).heliumBar)} className={styles.breathedSecond} />
        <path
          d={path((sample) => timeline.nitrogenBar[sample * COMPARTMENTS + compartment]!)}
          className={styles.gasMain}
        />
        <path
          d={path((sample) => timeline.heliumBar[sample * COMPARTMENTS + compartment]!)}
          className={styles.gasSecond}
        />
      </g>
      <path d={`M0,${inner.height}H${inner.width}`} className={shared.surface} />
      <TimeAxis x={x} width={inner.width} y={inner.height} />
    </>
  );
});

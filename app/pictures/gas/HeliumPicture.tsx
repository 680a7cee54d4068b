'use client';

import { scaleLinear, type ScaleLinear } from 'd3';
import { memo, useMemo } from 'react';
import { breathedAt } from '@/lib/ascent/breathed';
import { gasAt } from '@/lib/dive/timeline';
import type { IsobaricSwitch } from '@/lib/exposure/isobaric-switch';
import { gasName } from '@/lib/physics/gas';
import { printPressure } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import type { Scene } from '../scene';
import type { PictureProps } from '../picture-props';
import { Clipped } from '../axes/Clipped';
import { DIVE_STRIP } from '../axes/DiveStrip';
import { Levels } from '../axes/Levels';
import { pressureTicks, pressureUnit } from '../axes/pressure-axis';
import { columnPath } from '../axes/time-columns';
import { TimeGround } from '../axes/TimeGround';
import { timePicture, type TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import styles from './exposure.module.css';

const TOP = 36;
const RIM = { top: TOP + DIVE_STRIP, bottom: 28 };

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
  units,
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
  const { inner, x, y } = frame;
  const { nitrogenBar, heliumBar } = scene.timeline;
  const at = (sampleOf: number) => sampleOf * COMPARTMENTS + compartment;
  return (
    <TimePlot
      {...{ frame, width, height, cursorS, onCursor }}
      atCursor={(cursorX) => (
        <>
          <circle cx={cursorX} cy={y(nitrogenBar[at(sample)]!)} r={5} className={styles.point} />
          <circle cx={cursorX} cy={y(heliumBar[at(sample)]!)} r={5} className={styles.openPoint} />
        </>
      )}
      tip={({ sample: pointed }) => ({
        lines: [
          `nitrogen ${printPressure(nitrogenBar[at(pointed)]!, units)}`,
          `helium ${printPressure(heliumBar[at(pointed)]!, units)}`,
          `together ${printPressure(nitrogenBar[at(pointed)]! + heliumBar[at(pointed)]!, units)}`,
        ],
      })}
    >
      <Ground {...{ scene, frame, compartment, units }} />
      {switches.map((one) => (
        <g key={one.timeS} transform={`translate(${x(one.timeS)},0)`}>
          <line y1={-4} y2={inner.height} className={styles.switched} />
          <path d="M0,-13L6,-5H-6Z" className={styles.point} />
          <text x={9} y={-5} className={styles.name}>
            to {gasName(one.to)}
          </text>
        </g>
      ))}
    </TimePlot>
  );
}

const Ground = memo(function Ground({
  scene,
  frame,
  compartment,
  units,
}: {
  scene: Scene;
  frame: HeliumFrame;
  compartment: number;
  units: UnitSystem;
}) {
  const { inner, x, y, columns } = frame;
  const { timeline } = scene;
  const at = (sample: number) => x(timeline.timeS[sample]!);
  const path = (value: (sample: number) => number) => columnPath(columns, at, (column) => y(value(columns[column]!)));
  const breathed = (sample: number) => breathedAt(timeline, gasAt(timeline, sample), timeline.ambientBar[sample]!);
  return (
    <TimeGround frame={frame} dive={scene}>
      <Levels width={inner.width} levels={pressureTicks(y, units, 5).map(({ bar, text }) => ({ y: y(bar), text }))} />
      <text y={-22} className={styles.heading}>
        Pressure of each gas, {pressureUnit(units).name}
      </text>
      <Clipped {...inner} above={TOP}>
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
      </Clipped>
    </TimeGround>
  );
});

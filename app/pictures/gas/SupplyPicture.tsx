'use client';

import { scaleLinear, type ScaleLinear } from 'd3';
import { memo, useMemo } from 'react';
import type { GasSupply } from '@/lib/exposure/gas-supply';
import { saySupplyEvent } from '@/lib/exposure/supply-events';
import { sampleAt, sampleFromS } from '@/lib/dive/timeline';
import { printCylinderPressure } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import type { Scene } from '../scene';
import type { PictureProps } from '../picture-props';
import { spacedOut } from '../axes/spaced-out';
import { Clipped } from '../axes/Clipped';
import { DIVE_STRIP } from '../axes/DiveStrip';
import { Levels } from '../axes/Levels';
import { columnPath } from '../axes/time-columns';
import { TimeGround } from '../axes/TimeGround';
import { timePicture, type TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import { EmptyCylinder } from './EmptyCylinder';
import { cylinderTicks } from './supply-ticks';
import styles from './exposure.module.css';

const TOP = 20;
const RIM = { top: TOP + DIVE_STRIP, bottom: 28 };
const NAME_GAP = 15;

/** A gauge pressure drawn across the picture, bar. */
export interface PressureMark {
  readonly name: string;
  readonly bar: number;
  readonly kind: 'turn' | 'reserve';
}

interface SupplyPictureProps extends PictureProps {
  supply: GasSupply;
  marks: readonly PressureMark[];
}

interface SupplyFrame extends TimePicture {
  readonly y: ScaleLinear<number, number>;
}

/** What each gauge shows over the dive: as the gas really is, and as an ideal gas. */
export function SupplyPicture({
  scene,
  sample,
  cursorS,
  width,
  height,
  units,
  onCursor,
  view,
  supply,
  marks,
}: SupplyPictureProps) {
  const frame = useMemo((): SupplyFrame => {
    const picture = timePicture(scene, width, height, RIM, view);
    const most = supply.ideal.cylinders.reduce((bar, { cylinder }) => Math.max(bar, cylinder.startBar), 50);
    return { ...picture, y: scaleLinear([0, most * 1.06], [picture.inner.height, 0]) };
  }, [scene, supply, width, height, view]);
  const { inner, x, y } = frame;
  return (
    <TimePlot
      {...{ frame, width, height, cursorS, onCursor }}
      atCursor={(cursorX) =>
        supply.real.cylinders.map(({ cylinder, pressureBar }) => (
          <circle key={cylinder.name} cx={cursorX} cy={y(pressureBar[sample]!)} r={5} className={styles.point} />
        ))
      }
      tip={({ sample: at }) => ({
        lines: supply.real.cylinders.map(({ cylinder, pressureBar }, index) => {
          const ideal = supply.ideal.cylinders[index]!.pressureBar[at]!;
          return `${cylinder.name}: ${printCylinderPressure(pressureBar[at]!, units)} (ideal ${printCylinderPressure(ideal, units)})`;
        }),
      })}
      words={
        <>
          <Marks marks={marks} y={y} width={inner.width} units={units} />
          <Names scene={scene} frame={frame} supply={supply} />
        </>
      }
    >
      <Ground scene={scene} frame={frame} supply={supply} units={units} />
      {supply.events.map((event, index) => (
        <g
          key={index}
          transform={`translate(${x(event.timeS).toFixed(1)},${(inner.height - 16).toFixed(1)})`}
          className={styles.supplyMark}
          onClick={() => onCursor(sampleFromS(scene.timeline, event.timeS))}
        >
          <title>{saySupplyEvent(event, scene.timeline, units)}</title>
          <EmptyCylinder />
        </g>
      ))}
    </TimePlot>
  );
}

const Ground = memo(function Ground({
  scene,
  frame,
  supply,
  units,
}: {
  scene: Scene;
  frame: SupplyFrame;
  supply: GasSupply;
  units: UnitSystem;
}) {
  const { inner, x, y, columns } = frame;
  const at = (sample: number) => x(scene.timeline.timeS[sample]!);
  const path = (pressureBar: Float64Array) => columnPath(columns, at, (column) => y(pressureBar[columns[column]!]!));
  return (
    <TimeGround frame={frame} dive={scene}>
      <Levels
        width={inner.width}
        levels={cylinderTicks(y.domain()[1]!, units).map((bar) => ({
          y: y(bar),
          text: printCylinderPressure(bar, units).split(' ')[0]!,
        }))}
      />
      <text y={-8} className={styles.heading}>
        On the gauge, {units === 'metric' ? 'bar' : 'psi'}
      </text>
      <Clipped {...inner} above={TOP}>
        {supply.ideal.cylinders.map(({ cylinder, pressureBar }) => (
          <path key={cylinder.name} d={path(pressureBar)} className={styles.second} />
        ))}
        {supply.real.cylinders.map(({ cylinder, pressureBar }) => (
          <path key={cylinder.name} d={path(pressureBar)} className={styles.main} />
        ))}
      </Clipped>
    </TimeGround>
  );
});

/** What each cylinder is called, where its pressure ends. */
function Names({
  scene,
  frame: { inner, x, y },
  supply,
}: Pick<SupplyPictureProps, 'scene' | 'supply'> & { frame: SupplyFrame }) {
  const endSample = sampleAt(scene.timeline, x.endS);
  const ends = supply.real.cylinders.map(({ pressureBar }) => y(pressureBar[endSample]!));
  const places = spacedOut(ends, NAME_GAP, inner.height - 4);
  return supply.real.cylinders.map(({ cylinder }, index) => (
    <text key={cylinder.name} x={inner.width - 4} y={places[index]! - 5} textAnchor="end" className={styles.name}>
      {cylinder.name}
    </text>
  ));
}

/** Turn and reserve across the picture, their names kept apart on the left. */
function Marks({
  marks,
  y,
  width,
  units,
}: {
  marks: readonly PressureMark[];
  y: ScaleLinear<number, number>;
  width: number;
  units: UnitSystem;
}) {
  const shown = marks.filter(({ bar }) => bar <= y.domain()[1]!);
  const places = spacedOut(
    shown.map(({ bar }) => y(bar)),
    NAME_GAP,
    y.range()[0]!,
  );
  return (
    <>
      {shown.map(({ name, bar, kind }, index) => (
        <g key={name}>
          <line x2={width} y1={y(bar)} y2={y(bar)} className={kind === 'turn' ? styles.dashedRule : styles.solidRule} />
          <text x={6} y={places[index]! - 5} className={styles.ruleName}>
            {name}, {printCylinderPressure(bar, units)}
          </text>
        </g>
      ))}
    </>
  );
}

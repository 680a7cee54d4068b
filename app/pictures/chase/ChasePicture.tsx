'use client';

import { memo, useMemo } from 'react';
import { sampleAt } from '@/lib/dive/timeline';
import { printPressure } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { ChaseBody } from './ChaseBody';
import { LineNames } from './LineNames';
import { SecondMarks } from './SecondMarks';
import { chaseRange, chaseScales, halfTimeScale, type ChaseScales } from './chase-scales';
import { leadingCompartment } from '../leading';
import { markPath, type MarkShape } from '../axes/mark-shapes';
import { nearest } from '../hand/nearest';
import type { PictureProps } from '../picture-props';
import type { OverlaidDive } from '../profile/overlaid-dive';
import { PointerTip } from '../hand/PointerTip';
import { Plate } from '../axes/Plate';
import { compartmentStatesAt, type CompartmentState } from '../compartment-states';
import { tenth } from '../axes/time-columns';
import { usePointed } from '../hand/use-pointed';
import shared from '../pictures.module.css';
import styles from './chase.module.css';
import { breathedInertBar } from '@/lib/ascent/breathed';
import { PressureAxis } from '../axes/PressureAxis';

const MARK = { wide: 8, narrow: 6 };

/**
 * The chase: compartments along a half-time axis, pressure upward. Sixteen marks run after the line of the gas breathed,
 * under a roof of what each tolerates here, which drops onto them as the diver comes up.
 */
export function ChasePicture({
  scene,
  sample,
  cursorS,
  width,
  height,
  units,
  overlay,
  ways = [],
  looked,
}: PictureProps & {
  overlay?: OverlaidDive | undefined;
  ways?: readonly OverlaidDive[];
  /** The compartment (1–16) chosen to be looked at. */
  looked?: number | undefined;
}) {
  const { timeline } = scene;
  const halfTimesMin = timeline.compartments.nitrogenHalfTimeMin;
  const { lowBar, highBar } = useMemo(() => chaseRange(scene), [scene]);
  const scales = useMemo(
    () => chaseScales(halfTimesMin, { lowBar, highBar }, width, height),
    [halfTimesMin, lowBar, highBar, width, height],
  );
  const { margin, inner, x, y, narrow, low } = scales;
  const { pointed, handlers } = usePointed(margin, width);
  const states = compartmentStatesAt(scene, sample);
  const leader = leadingCompartment(scene, sample);
  const ambientBar = timeline.ambientBar[sample]!;
  const breathedBar = breathedInertBar(timeline, sample);
  const near = pointed && nearest(states, (state) => Math.abs(x(state.halfTimeMin) - pointed.x));
  const ringed = near ?? (looked === undefined ? undefined : states[looked - 1]);
  const size = narrow ? MARK.narrow : MARK.wide;

  return (
    <>
      <Plate width={width} height={height} margin={margin} {...handlers}>
        <PressureAxis {...{ inner, margin, y, units }} of="pressure" above={11} />
        <HalfTimeAxis halfTimesMin={halfTimesMin} width={inner.width} footY={inner.height} low={low} />
        <ChaseBody
          scene={scene}
          sample={sample}
          cursorS={cursorS}
          scales={scales}
          size={size}
          states={states}
          leader={leader}
        >
          {overlay && <SecondMarks dive={overlay} cursorS={cursorS} scales={scales} size={size} />}
          {ways.map((way, index) => (
            <path
              key={index}
              d={marksBeside(way, cursorS, scales, size, index > 0 ? 'triangle' : 'round')}
              className={styles.beside}
              data-way={index + 1}
            />
          ))}
        </ChaseBody>
        {ringed && (
          <path
            d={markPath('round', x(ringed.halfTimeMin), y(ringed.tensionBar), size * 2)}
            className={shared.pointed}
          />
        )}
        <OffTheTop state={states[0]!} scales={scales} units={units} besideKey={timeline.hasHelium} />
        <LineNames scales={scales} states={states} ambientBar={ambientBar} breathedBar={breathedBar} />
        <text
          x={x(states[leader - 1]!.halfTimeMin)}
          y={inner.height + 20}
          textAnchor="middle"
          className={styles.leadingNumber}
        >
          {leader}
        </text>
      </Plate>
      {near && (
        <PointerTip
          x={margin.left + x(near.halfTimeMin)}
          y={margin.top + y(near.tensionBar)}
          width={width}
          height={height}
          title={`Compartment ${near.number}, half-time ${near.halfTimeMin} min`}
        >
          <span>
            holds {printPressure(near.tensionBar, units)}
            {near.heliumBar > 0 && `, ${printPressure(near.heliumBar, units)} of it helium`}
          </span>
          <span>limit here {printPressure(near.limitNowBar, units)}</span>
          <span>limit at the surface {printPressure(near.limitAtSurfaceBar, units)}</span>
        </PointerTip>
      )}
    </>
  );
}

/** Where the sixteen would have been at the same instant of another dive: in rings, a second one in triangles. */
function marksBeside(
  { timeline }: OverlaidDive,
  cursorS: number,
  { x, y }: ChaseScales,
  size: number,
  shape: MarkShape,
): string {
  const at = sampleAt(timeline, cursorS) * COMPARTMENTS;
  return Array.from(timeline.compartments.nitrogenHalfTimeMin, (halfTimeMin, c) =>
    markPath(shape, x(halfTimeMin), y(timeline.nitrogenBar[at + c]! + timeline.heliumBar[at + c]!), size * 1.5),
  ).join('');
}

/** Along the foot each compartment's number over its half-time. It stays while the dive changes. */
const HalfTimeAxis = memo(function HalfTimeAxis({
  halfTimesMin,
  width,
  footY,
  low,
}: {
  halfTimesMin: Float64Array;
  width: number;
  footY: number;
  low: boolean;
}) {
  const x = halfTimeScale(halfTimesMin, width);
  const room = x(halfTimesMin[8]!) - x(halfTimesMin[7]!);
  const least = x(halfTimesMin[15]!) - x(halfTimesMin[14]!);
  // In a narrow plate three digits have no room even every third compartment.
  const sparse = x(halfTimesMin[15]!) - x(halfTimesMin[12]!) < 30 ? 5 : 3;
  const numberEvery = least < 19 ? sparse : 1;
  const halfTimeEvery = room < 34 ? sparse : 1;
  return (
    <>
      {Array.from(halfTimesMin, (halfTimeMin, c) => (
        <g key={c} transform={`translate(${tenth(x(halfTimeMin))},${footY})`}>
          <line y2={5} className={shared.tick} />
          {c % numberEvery === 0 && (
            <text y={20} className={styles.number} textAnchor="middle">
              {c + 1}
            </text>
          )}
          {c % halfTimeEvery === 0 && (
            <text y={36} className={styles.axis} textAnchor="middle">
              {Math.round(halfTimeMin * (halfTimeMin < 20 ? 10 : 1)) / (halfTimeMin < 20 ? 10 : 1)}
            </text>
          )}
        </g>
      ))}
      {!low && (
        <>
          <text x={0} y={footY + 54} className={styles.axis}>
            fast
          </text>
          <text x={width / 2} y={footY + 54} className={styles.axis} textAnchor="middle">
            half-time, min
          </text>
          <text x={width} y={footY + 54} className={styles.axis} textAnchor="end">
            slow
          </text>
        </>
      )}
    </>
  );
});

/** Over the plot, where no line runs, after the name of the axis. */
const ABOVE = { x: 62, y: -24 };

/** Where the limits here begin off the top, a mark at the edge says how far they reach. */
function OffTheTop({
  state: { limitNowBar },
  scales: { y },
  units,
  besideKey,
}: {
  state: CompartmentState;
  scales: ChaseScales;
  units: UnitSystem;
  /** The place over the plot is taken. */
  besideKey: boolean;
}) {
  if (y(limitNowBar) >= 0) return null;
  return (
    <g className={styles.offTheTop} transform={besideKey ? undefined : `translate(${ABOVE.x},${ABOVE.y})`}>
      <path d="M6,12l5,-10l5,10Z" />
      <text x={22} y={13} className={styles.limitName}>
        limit {printPressure(limitNowBar, units)}
      </text>
    </g>
  );
}

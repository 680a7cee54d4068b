'use client';

import { memo, useId, useMemo } from 'react';
import { sampleAt } from '@/lib/dive/timeline';
import { printPressure } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { SecondMarks } from './SecondMarks';
import { chaseRange, chaseScales, halfTimeScale, type ChaseScales } from './chase-scales';
import { leadingCompartment } from '../leading';
import { markPartPath, markPath, type MarkShape } from '../axes/mark-shapes';
import { nameY } from './name-place';
import { nearest } from '../hand/nearest';
import type { PictureProps } from '../picture-props';
import type { OverlaidDive } from '../profile/overlaid-dive';
import { PointerTip } from '../hand/PointerTip';
import { pressureTicks, pressureUnit } from '../axes/pressure-axis';
import { Plate } from '../axes/Plate';
import { Rock } from '../axes/Rock';
import {
  breathedInertBar,
  isPastSurfaceLimit,
  compartmentStatesAt,
  type CompartmentState,
} from '../compartment-states';
import { spacedOut } from '../axes/spaced-out';
import { tenth } from '../axes/time-columns';
import { usePointed } from '../hand/use-pointed';
import shared from '../pictures.module.css';
import styles from './chase.module.css';

/** A mark’s tail reaches to where it was this long ago. */
const TAIL_S = 120;
const MARK = { wide: 8, narrow: 6 };
const LEAD = 1.35;

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
}: PictureProps & { overlay?: OverlaidDive | undefined; ways?: readonly OverlaidDive[] }) {
  const { timeline } = scene;
  const rock = useId();
  const frame = useId();
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
  const before = sampleAt(timeline, cursorS - TAIL_S) * COMPARTMENTS;
  const beforeBar = (c: number) => timeline.nitrogenBar[before + c]! + timeline.heliumBar[before + c]!;
  const near = pointed && nearest(states, (state) => Math.abs(x(state.halfTimeMin) - pointed.x));
  const size = narrow ? MARK.narrow : MARK.wide;

  /** Across the whole picture, level before the first compartment and after the last. */
  const across = (pick: (state: CompartmentState) => number) => {
    const inside = states.map((state) => `L${tenth(x(state.halfTimeMin))},${tenth(y(pick(state)))}`).join('');
    return `M0,${tenth(y(pick(states[0]!)))}${inside}L${inner.width},${tenth(y(pick(states[15]!)))}`;
  };
  const roof = across((state) => state.limitNowBar);
  const breathedY = tenth(y(breathedBar));
  let leashes = '';
  let tails = '';
  states.forEach((state, c) => {
    const at = tenth(x(state.halfTimeMin));
    leashes += `M${at},${breathedY}V${tenth(y(state.tensionBar))}`;
    tails += `M${tenth(at - size * 0.7)},${tenth(y(state.tensionBar))}h${tenth(size * 1.4)}L${at},${tenth(y(beforeBar(c)))}Z`;
  });

  return (
    <>
      <Plate width={width} height={height} margin={margin} {...handlers}>
        <defs>
          <Rock id={rock} />
          <clipPath id={frame}>
            <rect width={inner.width} height={inner.height} />
          </clipPath>
        </defs>
        <PressureAxis scales={scales} units={units} />
        <HalfTimeAxis halfTimesMin={halfTimesMin} width={inner.width} footY={inner.height} low={low} />
        <g clipPath={`url(#${frame})`}>
          <path d={`${roof}V-1H0Z`} fill={`url(#${rock})`} />
          <path d={roof} className={styles.roof} />
          <path d={across((state) => state.limitAtSurfaceBar)} className={styles.surfaceLimit} />
          <path d={leashes} className={styles.leash} />
          <path d={`M0,${tenth(y(ambientBar))}H${inner.width}`} className={styles.water} />
          <path d={`M0,${breathedY}H${inner.width}`} className={styles.breathed} />
          <path d={tails} className={styles.tail} />
        </g>
        {overlay && <SecondMarks dive={overlay} cursorS={cursorS} scales={scales} size={size} />}
        {ways.map((way, index) => (
          <path
            key={index}
            d={marksBeside(way, cursorS, scales, size, index > 0 ? 'triangle' : 'round')}
            className={styles.beside}
            data-way={index + 1}
          />
        ))}
        <Marks
          states={states}
          scales={scales}
          size={size}
          leader={leader}
          mixed={timeline.hasHelium}
          levelsBar={[ambientBar, breathedBar]}
        />
        {near && (
          <path d={markPath('round', x(near.halfTimeMin), y(near.tensionBar), size * 2)} className={shared.pointed} />
        )}
        <OffTheTop state={states[0]!} scales={scales} units={units} besideKey={timeline.hasHelium} />
        <LineNames
          scales={scales}
          names={[
            { text: 'water', bar: ambientBar, className: styles.waterName },
            { text: 'gas breathed', bar: breathedBar, className: styles.gasName },
            { text: 'limit here', bar: states[15]!.limitNowBar, className: styles.limitName },
            {
              text: narrow ? 'surface limit' : 'limit at the surface',
              bar: states[15]!.limitAtSurfaceBar,
              className: styles.limitName,
            },
          ]}
        />
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

/** Pressure upward. */
const PressureAxis = memo(function PressureAxis({
  scales: { margin, inner, y },
  units,
}: {
  scales: ChaseScales;
  units: UnitSystem;
}) {
  return (
    <>
      {pressureTicks(y, units, inner.height / 60).map(({ bar, text }) => (
        <g key={bar} transform={`translate(0,${tenth(y(bar))})`}>
          <line x2={inner.width} className={shared.grid} />
          <text x={-8} dy="0.32em" className={styles.axis} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <text x={-margin.left + 2} y={-11} className={styles.axis}>
        pressure, {pressureUnit(units).name}
      </text>
    </>
  );
});

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

/** All sixteen in few paths. Round while the surface would be tolerated; filled with nitrogen from below, helium left open. */
function Marks({
  states,
  scales: { x, y, narrow },
  size,
  leader,
  mixed,
  levelsBar,
}: {
  states: readonly CompartmentState[];
  scales: ChaseScales;
  size: number;
  leader: number;
  mixed: boolean;
  /** Where lines run level across the picture. */
  levelsBar: readonly number[];
}) {
  let round = '';
  let roundNitrogen = '';
  let lozenges = '';
  let lozengesNitrogen = '';
  for (const state of states) {
    const radius = state.number === leader ? size * LEAD : size;
    const place = [x(state.halfTimeMin), y(state.tensionBar), radius] as const;
    const share = state.tensionBar > 0 ? state.nitrogenBar / state.tensionBar : 1;
    if (isPastSurfaceLimit(state)) {
      lozenges += markPath('lozenge', ...place);
      if (mixed) lozengesNitrogen += markPartPath('lozenge', ...place, share);
    } else {
      round += markPath('round', ...place);
      if (mixed) roundNitrogen += markPartPath('round', ...place, share);
    }
  }
  const first = states[leader - 1]!;
  return (
    <>
      <path d={round} className={mixed ? styles.outline : `${styles.outline} ${styles.nitrogen}`} />
      <path d={lozenges} className={mixed ? styles.outlineOver : `${styles.outlineOver} ${styles.nitrogenOver}`} />
      {mixed && <path d={roundNitrogen} className={styles.nitrogen} />}
      {mixed && <path d={lozengesNitrogen} className={styles.nitrogenOver} />}
      <text
        x={x(first.halfTimeMin)}
        y={nameY(y(first.tensionBar), size * LEAD * 1.3, linesNear(states, leader, levelsBar, y))}
        textAnchor="middle"
        className={styles.leadName}
      >
        {first.number}
        {!narrow && ' leads'}
      </text>
      {mixed && (
        <text x={0} y={-11} dx={110} className={styles.key}>
          filled: nitrogen, open: helium
        </text>
      )}
    </>
  );
}

/** How far down each line reaches beside the leading mark: from its highest place there to its lowest. */
function linesNear(
  states: readonly CompartmentState[],
  leader: number,
  levelsBar: readonly number[],
  y: ChaseScales['y'],
): readonly (readonly [top: number, foot: number])[] {
  const beside = states.slice(Math.max(0, leader - 2), leader + 1);
  const spans = [
    ...levelsBar.map((bar) => [bar]),
    beside.map(({ limitNowBar }) => limitNowBar),
    beside.map(({ limitAtSurfaceBar }) => limitAtSurfaceBar),
  ];
  return spans.map((bars) => [y(Math.max(...bars)), y(Math.min(...bars))]);
}

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

function LineNames({
  scales: { inner, y },
  names,
}: {
  scales: ChaseScales;
  names: readonly { text: string; bar: number; className: string | undefined }[];
}) {
  const ends = names.map(({ bar }) => Math.max(0, y(bar)));
  const places = spacedOut(ends, 18, inner.height);
  return names.map(({ text, className }, index) => (
    <g key={text}>
      <path
        d={`M${inner.width},${tenth(ends[index]!)}L${inner.width + 6},${tenth(places[index]!)}`}
        className={styles.nameTie}
      />
      <text x={inner.width + 9} y={places[index]} dy="0.32em" className={className}>
        {text}
      </text>
    </g>
  ));
}

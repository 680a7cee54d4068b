'use client';

import { memo, useId, useMemo } from 'react';
import { printPressure } from '@/lib/quantity/pressure';
import type { Scene } from '../scene';
import { markPartPath, markPath } from '../axes/mark-shapes';
import { nearest } from '../hand/nearest';
import type { PictureProps } from '../picture-props';
import { PointerTip } from '../hand/PointerTip';
import { toleranceAt, type Tolerance } from './pressure-lines';
import { pressureScales, type PressureScales } from './pressure-scales';
import { trailPath, trailSamples } from './pressure-trail';
import { Plate } from '../axes/Plate';
import { Rock } from '../axes/Rock';
import { isPastSurfaceLimit, compartmentStatesAt, type CompartmentState } from '../compartment-states';
import { tenth } from '../axes/time-columns';
import { usePointed } from '../hand/use-pointed';
import styles from './pressure.module.css';
import { Ground, LineNames } from './PressureGround';

interface PressurePictureProps extends PictureProps {
  /** The compartment (1–16) looked at. */
  compartment: number;
  /** Marks all sixteen, and what each tolerates, in place of one's trail. */
  all: boolean;
}

/** Pressure against pressure: what surrounds the diver along the foot, what a compartment holds upward, and the limit it must stay under. */
export function PressurePicture({ scene, sample, width, height, units, compartment, all }: PressurePictureProps) {
  const { timeline } = scene;
  const rock = useId();
  const frame = useId();
  const scales = useMemo(() => pressureScales(scene, width, height), [scene, width, height]);
  const { margin, inner, x, y } = scales;
  const { pointed, handlers } = usePointed(margin, width);
  const states = compartmentStatesAt(scene, sample);
  const one = states[compartment - 1]!;
  const near = pointed && (all ? nearest(states, (state) => Math.abs(y(state.tensionBar) - pointed.y)) : one);
  const nowX = x(timeline.ambientBar[sample]!);
  // With nitrogen alone the limits stand still but for where the first stop lies; helium moves them with every sample.
  const limitsOf = timeline.hasHelium ? sample : scene.figures.anchorM[sample]!;
  // oxlint-disable-next-line react/exhaustive-deps -- `limitsOf` stands for the sample
  const tolerance = useMemo(() => toleranceAt(scene, sample, compartment), [scene, compartment, limitsOf]);
  const trail = useMemo(() => trailSamples(timeline), [timeline]);
  const whole = useMemo(
    () => (all ? '' : trailPath(timeline, trail, timeline.length - 1, compartment, x, y)),
    [all, timeline, trail, compartment, x, y],
  );

  return (
    <>
      <Plate width={width} height={height} margin={margin} {...handlers}>
        <defs>
          <Rock id={rock} />
          <clipPath id={frame}>
            <rect width={inner.width} height={inner.height} />
          </clipPath>
        </defs>
        <Ground scene={scene} scales={scales} units={units} />
        <g clipPath={`url(#${frame})`}>
          {all ? (
            <Fan scene={scene} sample={sample} scales={scales} />
          ) : (
            <Limits scene={scene} scales={scales} tolerance={tolerance} rock={rock} />
          )}
          <path d={straight(scales, (bar) => bar)} className={styles.balance} />
          <path d={`M${tenth(nowX)},0V${inner.height}`} className={styles.here} />
          <path d={whole} className={styles.trailAhead} />
          {!all && <path d={trailPath(timeline, trail, sample, compartment, x, y)} className={styles.trail} />}
        </g>
        <LineNames scene={scene} scales={scales} tolerance={tolerance} all={all} />
        <Marks
          states={all ? states : [one]}
          x={nowX}
          y={y}
          mixed={timeline.hasHelium}
          named={near?.number ?? compartment}
        />
      </Plate>
      {near && (
        <PointerTip
          x={margin.left + nowX}
          y={margin.top + y(near.tensionBar)}
          width={width}
          height={height}
          title={`Compartment ${near.number}, half-time ${near.halfTimeMin} min`}
        >
          <span>holds {printPressure(near.tensionBar, units)}</span>
          <span>ambient pressure {printPressure(timeline.ambientBar[sample]!, units)}</span>
          <span>limit here {printPressure(near.limitNowBar, units)}</span>
        </PointerTip>
      )}
    </>
  );
}

/** A straight line across the picture: what a pressure is at each ambient pressure. */
function straight({ x, y, inner }: PressureScales, at: (ambientBar: number) => number): string {
  const [from, to] = x.domain() as [number, number];
  return `M0,${tenth(y(at(from)))}L${inner.width},${tenth(y(at(to)))}`;
}

const BENDS = 24;

/** The limit that is in force: bent between the surface and the first stop, straight beyond. */
function inForcePath({ timeline, figures, dive }: Scene, scales: PressureScales, tolerance: Tolerance): string {
  const { low, high } = dive.settings.gradientFactors;
  if (low === high) return straight(scales, tolerance.inForce);
  const { x, y } = scales;
  const [from, to] = x.domain() as [number, number];
  const firstBar =
    timeline.surfaceBar + figures.anchorM.reduce((deepest, stop) => Math.max(deepest, stop), 0) * timeline.barPerMetre;
  const points = [
    from,
    ...Array.from(
      { length: BENDS + 1 },
      (_, i) => timeline.surfaceBar + ((firstBar - timeline.surfaceBar) * i) / BENDS,
    ),
    to,
  ];
  return points
    .map((bar, index) => `${index === 0 ? 'M' : 'L'}${tenth(x(bar))},${tenth(y(tolerance.inForce(bar)))}`)
    .join('');
}

const Limits = memo(function Limits({
  scene,
  scales,
  tolerance,
  rock,
}: {
  scene: Scene;
  scales: PressureScales;
  tolerance: Tolerance;
  rock: string;
}) {
  const { low, high } = scene.dive.settings.gradientFactors;
  const edge = inForcePath(scene, scales, tolerance);
  return (
    <>
      <path d={`${edge}V-9999H0Z`} fill={`url(#${rock})`} />
      {high < 1 && <path d={straight(scales, (bar) => tolerance.underGf(1, bar))} className={styles.modelLimit} />}
      {low < high && (
        <path d={straight(scales, (bar) => tolerance.underGf(low, bar))} className={styles.gradientFactor} />
      )}
      {low < high && (
        <path d={straight(scales, (bar) => tolerance.underGf(high, bar))} className={styles.gradientFactor} />
      )}
      <path d={edge} className={styles.inForce} />
    </>
  );
});

/** What all sixteen tolerate under the high gradient factor: a fan, steep for the fast. */
function Fan({ scene, sample, scales }: { scene: Scene; sample: number; scales: PressureScales }) {
  const { high } = scene.dive.settings.gradientFactors;
  let fan = '';
  for (let number = 1; number <= 16; number += 1) {
    const { underGf } = toleranceAt(scene, sample, number);
    fan += straight(scales, (bar) => underGf(high, bar));
  }
  return <path d={fan} className={styles.gradientFactor} />;
}

function Marks(props: {
  states: readonly CompartmentState[];
  x: number;
  y: PressureScales['y'];
  mixed: boolean;
  named: number;
}) {
  const { states, x, y, mixed, named } = props;
  return states.map((state) => {
    const shape = isPastSurfaceLimit(state) ? 'lozenge' : 'round';
    const radius = states.length > 1 ? 5.5 : 8.5;
    const share = mixed ? state.nitrogenBar / state.tensionBar : 1;
    return (
      <g key={state.number} className={shape === 'round' ? styles.mark : styles.markOver}>
        <path d={markPath(shape, x, y(state.tensionBar), radius)} className={styles.outline} />
        <path d={markPartPath(shape, x, y(state.tensionBar), radius, share)} className={styles.nitrogen} />
        {state.number === named && (
          <text x={x + 14} y={y(state.tensionBar)} dy="0.32em" className={styles.markName}>
            {state.number}
          </text>
        )}
      </g>
    );
  });
}

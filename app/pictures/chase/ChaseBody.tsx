import { useId, type ReactNode } from 'react';
import { sampleAt } from '@/lib/dive/timeline';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { markPartPath, markPath } from '../axes/mark-shapes';
import { Rock } from '../axes/Rock';
import { tenth } from '../axes/time-columns';
import { isPastSurfaceLimit, type CompartmentState } from '../compartment-states';
import type { Scene } from '../scene';
import type { ChaseScales } from './chase-scales';
import { nameY } from './name-place';
import styles from './chase.module.css';
import { breathedInertBar } from '@/lib/ascent/breathed';

/** A mark’s tail reaches to where it was this long ago. */
const TAIL_S = 120;
const LEAD = 1.35;

interface ChaseBodyProps {
  scene: Scene;
  sample: number;
  cursorS: number;
  scales: ChaseScales;
  /** Of a mark, from its middle. */
  size: number;
  states: readonly CompartmentState[];
  leader: number;
  /** What lies between the lines and the marks. */
  children?: ReactNode;
}

/** What runs in the chase, on any size of plate: the lines, the roof over them, and sixteen marks. */
export function ChaseBody({ scene, sample, cursorS, scales, size, states, leader, children }: ChaseBodyProps) {
  const { timeline } = scene;
  const { inner, x, y } = scales;
  const rock = useId();
  const frame = useId();
  const ambientBar = timeline.ambientBar[sample]!;
  const breathedBar = breathedInertBar(timeline, sample);
  const before = sampleAt(timeline, cursorS - TAIL_S) * COMPARTMENTS;
  const beforeBar = (c: number) => timeline.nitrogenBar[before + c]! + timeline.heliumBar[before + c]!;

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
      <defs>
        <Rock id={rock} />
        <clipPath id={frame}>
          <rect width={inner.width} height={inner.height} />
        </clipPath>
      </defs>
      <g clipPath={`url(#${frame})`}>
        <path d={`${roof}V-1H0Z`} fill={`url(#${rock})`} />
        <path d={roof} className={styles.roof} />
        <path d={across((state) => state.limitAtSurfaceBar)} className={styles.surfaceLimit} />
        <path d={leashes} className={styles.leash} />
        <path d={`M0,${tenth(y(ambientBar))}H${inner.width}`} className={styles.water} />
        <path d={`M0,${breathedY}H${inner.width}`} className={styles.breathed} />
        <path d={tails} className={styles.tail} />
      </g>
      {children}
      <Marks
        states={states}
        scales={scales}
        size={size}
        leader={leader}
        mixed={timeline.hasHelium}
        levelsBar={[ambientBar, breathedBar]}
      />
    </>
  );
}

/** All sixteen in few paths. Round while the surface would be tolerated; filled with nitrogen from below, helium left open. */
function Marks({
  states,
  scales: { x, y, narrow, inner },
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
        y={nameY(y(first.tensionBar), size * LEAD * 1.3, linesNear(states, leader, levelsBar, y), inner.height)}
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

import { useId } from 'react';
import { sampleAt } from '@/lib/dive/timeline';
import { printClock } from '@/lib/quantity/duration';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { straightScale } from '../parts/straight-scale';
import { Plate } from '../pictures/axes/Plate';
import { pressureTicks, pressureUnit } from '../pictures/axes/pressure-axis';
import { Rock } from '../pictures/axes/Rock';
import { timeScale } from '../pictures/axes/time-scale';
import { ChaseBody } from '../pictures/chase/ChaseBody';
import { chaseRange, smallChaseScales, type ChaseScales } from '../pictures/chase/chase-scales';
import { LineNames } from '../pictures/chase/LineNames';
import { compartmentStatesAt } from '../pictures/compartment-states';
import { leadingCompartment } from '../pictures/leading';
import { ProfileGround } from '../pictures/profile/ProfileGround';
import type { Scene } from '../pictures/scene';
import { chaseOf, type PromiseMoment } from './promise-moments';
import styles from './PromisePlate.module.css';
import { breathedInertBar } from '@/lib/ascent/breathed';

interface PromisePlateProps {
  scene: Scene;
  moments: readonly PromiseMoment[];
  units: UnitSystem;
  width: number;
  /** Where the hand is; undefined while nobody has moved it. */
  cursorS: number | undefined;
}

/** Narrower, there is room for one chase, and it shows the moment under the hand. */
const ONE_CHASE_BELOW = 460;
/** A plate keeps its shape from the first drawing on, so that nothing moves when it is measured. */
const SHAPE = { wide: 0.76, narrow: 1.08 };
const LEFT = 46;
const NAMES = 116;
const GAP = 18;
const AXIS = 30;
const CAPTION = 40;
const FOOT = 22;

/** One dive that is stayed too long, its roof of rock, and what the sixteen compartments do at three of its minutes. */
export function PromisePlate({ scene, moments, units, width, cursorS }: PromisePlateProps) {
  const rock = useId();
  const frame = useId();
  const one = width < ONE_CHASE_BELOW;
  const height = Math.round(width * (one ? SHAPE.narrow : SHAPE.wide));
  const { timeline, figures } = scene;
  const deepestM = Math.max(...timeline.legs.map(({ toM }) => toM));
  const inner = { width: width - LEFT - 14, height: Math.round(height * 0.42) };
  const x = timeScale(timeline, inner.width);
  const y = straightScale([0, deepestM * 1.08], [0, inner.height]);
  const chasesTop = inner.height + AXIS + CAPTION + 18;
  const live = cursorS === undefined ? undefined : chaseOf(moments, cursorS);
  const shown = moments.map((moment, index) => (index === live ? { ...moment, timeS: cursorS! } : moment));
  const chases = one ? [shown[live ?? 2]!] : shown;
  const room = width - LEFT - NAMES + GAP;
  const chase = {
    width: room / chases.length - GAP,
    height: height - 12 - chasesTop - FOOT,
  };
  const scales = smallChaseScales(timeline.compartments.nitrogenHalfTimeMin, chaseRange(scene), chase);
  const roof = lowestOfRoof(scene);
  return (
    <Plate width={width} height={height} margin={{ left: LEFT, top: 12 }}>
      <defs>
        <Rock id={rock} />
        <clipPath id={frame}>
          <rect x={-2} y={-2} width={inner.width + 4} height={inner.height + 4} />
        </clipPath>
      </defs>
      <ProfileGround scene={scene} scales={{ inner, x, y, deepestM }} units={units} rock={rock} frame={frame} />
      <text
        x={(x(moments[1]!.timeS) + x(roof.timeS)) / 2}
        y={y(roof.depthM) + 16}
        textAnchor="middle"
        className={styles.ceiling}
      >
        ceiling
      </text>
      {chases.map(({ timeS, words }, index) => {
        const left = index * (chase.width + GAP);
        const sample = sampleAt(timeline, timeS);
        const states = compartmentStatesAt(scene, sample);
        const isLive = cursorS !== undefined && (one || index === live);
        const atX = x(timeS);
        const depthY = y(timeline.depthM[sample]!);
        return (
          <g key={words} data-chase={index + 1}>
            <path
              d={`M${atX},${depthY}V${inner.height}M${atX},${inner.height + AXIS - 4}L${left},${chasesTop - CAPTION + 2}V${chasesTop - 2}`}
              className={isLive ? styles.liveTie : styles.tie}
            />
            <circle cx={atX} cy={depthY} r={isLive ? 6 : 4.5} className={styles.moment} />
            <text x={left + 9} y={chasesTop - CAPTION + 14} className={styles.time}>
              {printClock(timeS)}
            </text>
            <text x={left + 9} y={chasesTop - CAPTION + 31} className={styles.words}>
              {isLive && timeS !== moments[one ? (live ?? 2) : index]!.timeS ? 'at your hand' : words}
            </text>
            <g transform={`translate(${left},${chasesTop})`}>
              {index === 0 && <Pressures scales={scales} units={units} />}
              <path d={`M0,${chase.height}H${chase.width}`} className={styles.foot} />
              <ChaseBody
                scene={scene}
                sample={sample}
                cursorS={timeS}
                scales={scales}
                size={one ? 5 : 4}
                states={states}
                leader={leadingCompartment(scene, sample)}
              />
              {index === chases.length - 1 && (
                <LineNames
                  scales={scales}
                  states={states}
                  ambientBar={timeline.ambientBar[sample]!}
                  breathedBar={breathedInertBar(timeline, sample)}
                />
              )}
              <text x={2} y={chase.height + 17} className={styles.words}>
                fast
              </text>
              <text x={chase.width} y={chase.height + 17} textAnchor="end" className={styles.words}>
                slow
              </text>
            </g>
          </g>
        );
      })}
      {cursorS !== undefined && figures.ceilingM[sampleAt(timeline, cursorS)]! > 0 && (
        <circle
          cx={x(cursorS)}
          cy={y(figures.ceilingM[sampleAt(timeline, cursorS)]!)}
          r={4}
          className={styles.ceilingHere}
        />
      )}
    </Plate>
  );
}

function Pressures({ scales: { inner, y }, units }: { scales: ChaseScales; units: UnitSystem }) {
  return (
    <>
      {pressureTicks(y, units, inner.height / 44).map(({ bar, text }) => (
        <text key={bar} x={-7} y={y(bar)} dy="0.34em" textAnchor="end" className={styles.words}>
          {text}
        </text>
      ))}
      <text x={-7} y={inner.height + 17} textAnchor="end" className={styles.words}>
        {pressureUnit(units).name}
      </text>
    </>
  );
}

/** Where the ceiling reaches down farthest. */
function lowestOfRoof({ timeline, figures }: Scene): { readonly timeS: number; readonly depthM: number } {
  const { ceilingM } = figures;
  let lowest = 0;
  for (let i = 1; i < ceilingM.length; i += 1) if (ceilingM[i]! > ceilingM[lowest]!) lowest = i;
  return { timeS: timeline.timeS[lowest]!, depthM: ceilingM[lowest]! };
}

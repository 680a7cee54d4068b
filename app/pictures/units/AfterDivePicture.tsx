'use client';

import { memo, useId } from 'react';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { printHours } from '@/lib/quantity/duration';
import { straightScale } from '../../parts/straight-scale';
import { Levels } from '../axes/Levels';
import { Plate } from '../axes/Plate';
import { Rock } from '../axes/Rock';
import { tenth } from '../axes/time-columns';
import { PROFILE_MARGIN } from '../profile/profile-scales';
import shared from '../pictures.module.css';
import held from './bands.module.css';
import styles from './after-dive.module.css';

const MARGIN = { ...PROFILE_MARGIN, top: 4 };
const NAME = 20;
const BAND = 18;
const LANE = NAME + BAND + 8;
const PLOT = 96;
const FOOT = 46;

/** From the first minutes to two days, h. */
const FIRST_H = 5 / 60;
const LAST_H = 48;
const TICKS_H = {
  wide: [FIRST_H, 1 / 6, 0.5, 1, 2, 4, 8, 12, 24, LAST_H],
  narrow: [FIRST_H, 0.5, 1, 2, 4, 12, 24, LAST_H],
};
const NARROW = 560;
const POINTS = 96;
/** What is so now is written so far along; other words go under it. */
const ROOM_FOR_NOW = 110;

/** Something that has to be waited for. */
export interface LetsGo {
  readonly name: string;
  /** From now on; none or less where nothing is waited for. */
  readonly hours: number;
  readonly says: string;
  /** The compartment (1–16) that needs it longest, where it is the tissues that do. */
  readonly leader?: number;
  /** Who holds the diver back: the model's limit, a rule, or gas that is still there. */
  readonly by: 'model' | 'rule' | 'gas';
}

/** How the no-stop time of a next dive comes back. */
interface ComesBack {
  readonly name: string;
  readonly minutesAfter: (minutes: number) => number;
  readonly nowMin: number;
  readonly saysNow: string;
  readonly freshMin: number;
  readonly saysFresh: string;
  readonly recoveredAfterMin: number;
}

interface AfterDiveProps {
  width: number;
  /** What the axis counts. */
  from: string;
  waits: readonly LetsGo[];
  next: ComesBack | undefined;
}

/** How high it is. */
export const afterDiveHeight = (waits: number, next: boolean) =>
  MARGIN.top + waits * LANE + (next ? NAME + PLOT : 0) + FOOT;

/** The two days after a dive on one logarithmic axis: when each thing that is waited for lets go, and the next dive's no-stop time rising. */
export const AfterDivePicture = memo(function AfterDivePicture({ width, from, waits, next }: AfterDiveProps) {
  const rock = useId();
  const height = afterDiveHeight(waits.length, next !== undefined);
  const inner = { width: width - MARGIN.left - MARGIN.right, height: height - MARGIN.top - FOOT };
  const x = (hours: number) =>
    Math.min(Math.max(Math.log(hours / FIRST_H), 0) / Math.log(LAST_H / FIRST_H), 1) * inner.width;
  return (
    <Plate width={width} height={height} margin={MARGIN}>
      <defs>
        <Rock id={rock} />
      </defs>
      {TICKS_H[width < NARROW ? 'narrow' : 'wide'].map((hours) => (
        <g key={hours} transform={`translate(${tenth(x(hours))},0)`}>
          <path d={`M0,${NAME}V${inner.height}`} className={shared.grid} />
          <text y={inner.height + 18} textAnchor="middle" className={shared.axis}>
            {printHours(hours * 3600)}
          </text>
        </g>
      ))}
      <text x={inner.width} y={inner.height + 38} textAnchor="end" className={shared.axisTitle}>
        {from}
      </text>
      {waits.map(({ name, hours, says, leader, by }, lane) => (
        <g key={name} transform={`translate(0,${lane * LANE})`}>
          <text y={14} className={styles.name}>
            {name}
            <tspan dx={10} className={styles.says}>
              {says}
              {leader !== undefined && width >= NARROW && `, compartment ${leader}`}
            </tspan>
          </text>
          <rect y={NAME} width={inner.width} height={BAND} className={held.band} />
          {hours > 0 && (
            <rect
              y={NAME}
              width={tenth(Math.max(3, x(hours)))}
              height={BAND}
              className={held[by]}
              fill={by === 'model' ? `url(#${rock})` : undefined}
            />
          )}
          {hours > LAST_H && <path d={`M${inner.width - 12},${NAME + 4}l6,5l-6,5`} className={styles.on} />}
        </g>
      ))}
      {next && (
        <g transform={`translate(0,${waits.length * LANE})`}>
          <text y={14} className={styles.name}>
            {next.name}
          </text>
          <g transform={`translate(0,${NAME})`}>
            <Rising next={next} x={x} width={inner.width} />
          </g>
        </g>
      )}
      <path d={`M0,${inner.height}H${inner.width}`} className={shared.surface} />
    </Plate>
  );
});

/** The no-stop time of the next dive over the hours waited, under that of a rested diver. */
function Rising({ next, x, width }: { next: ComesBack; x: (hours: number) => number; width: number }) {
  const capped = (minutes: number) => Math.min(minutes, NO_STOP_CAP_MIN);
  const y = straightScale([0, Math.max(1, capped(next.freshMin)) * 1.25], [PLOT, 0]);
  const points = Array.from({ length: POINTS + 1 }, (_, i) => {
    const hours = FIRST_H * (LAST_H / FIRST_H) ** (i / POINTS);
    return `${tenth(x(hours))},${tenth(y(capped(next.minutesAfter(hours * 60))))}`;
  });
  const restedY = y(capped(next.freshMin));
  const recoveredX = x(next.recoveredAfterMin / 60);
  const recovers = next.recoveredAfterMin / 60 > FIRST_H && next.recoveredAfterMin / 60 <= LAST_H;
  const left = recoveredX > width / 2;
  const nowY = Math.min(PLOT - 24, y(capped(next.nowMin)) + 18);
  return (
    <>
      <Levels width={width} levels={[{ y: PLOT, text: '0 min' }]} />
      <path d={`M0,${tenth(restedY)}H${width}`} className={styles.rested} />
      <text x={width - 4} y={restedY - 7} textAnchor="end" className={styles.says}>
        a rested diver: {next.saysFresh}
      </text>
      <path d={`M${points.join('L')}`} className={shared.profile} />
      <circle cy={tenth(y(capped(next.nowMin)))} r={5} className={styles.point} />
      <text x={9} y={tenth(nowY)} className={styles.word}>
        now: {next.saysNow}
      </text>
      {recovers && (
        <>
          <circle
            cx={tenth(recoveredX)}
            cy={tenth(y(capped(next.minutesAfter(next.recoveredAfterMin))))}
            r={5}
            className={styles.point}
          />
          <text
            x={tenth(recoveredX + (left ? -8 : 8))}
            y={recoveredX < ROOM_FOR_NOW ? nowY + 18 : restedY + 30}
            textAnchor={left ? 'end' : 'start'}
            className={styles.word}
          >
            as rested after {printHours(next.recoveredAfterMin * 60, 'up')}
          </text>
        </>
      )}
    </>
  );
}

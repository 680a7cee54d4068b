'use client';

import { memo, useId, useMemo } from 'react';
import { STOP_KINDS } from '@/lib/rules/stop-kinds';
import { askedSpells, type AskedSpell } from '@/lib/rules/unit/asked-spells';
import type { Watch } from '@/lib/rules/watch';
import { Clipped } from '../axes/Clipped';
import { Rock } from '../axes/Rock';
import { TimeGround } from '../axes/TimeGround';
import { timePicture, type TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import type { PictureProps } from '../picture-props';
import held from './bands.module.css';
import styles from './unit-bands.module.css';

const RIM = { top: 8, bottom: 28 };
const NAME = 20;
const BAND = 20;
const LANE = NAME + BAND + 8;
/** Room that words need in a band. */
const ROOM_FOR_WORDS = 100;

const WORDS: Readonly<Record<AskedSpell['by'], string>> = {
  model: STOP_KINDS.required.word,
  rule: STOP_KINDS.imposed.word,
  lock: 'locked out',
};

/** How high it is for so many units. */
export const unitBandsHeight = (units: number) => RIM.top + units * LANE + RIM.bottom;

interface UnitBandsProps extends PictureProps {
  watches: readonly Watch[];
}

/** The dive as each unit takes it, one band under the other on the dive's own time: hatched where it asks for a stop. */
export function UnitBandsPicture({ scene, cursorS, width, height, onCursor, view, watches }: UnitBandsProps) {
  const frame = useMemo(() => timePicture(scene, width, height, RIM, view), [scene, width, height, view]);
  const bands = useMemo(() => watches.map((watch) => ({ watch, spells: askedSpells(watch) })), [watches]);
  const asks = (atS: number, spells: readonly AskedSpell[]) =>
    spells.find(({ fromS, toS }) => fromS <= atS && atS < toS);
  return (
    <TimePlot
      {...{ frame, width, height, cursorS, onCursor }}
      tip={({ sample }) => ({
        lines: bands.map(({ watch, spells }) => {
          const asked = asks(scene.timeline.timeS[sample]!, spells);
          return `${watch.setup.name}: ${asked ? WORDS[asked.by] : watch.setup.mode === 'gauge' ? 'gauge' : 'no stop'}`;
        }),
      })}
      words={<Words bands={bands} frame={frame} />}
    >
      <Bands bands={bands} frame={frame} />
    </TimePlot>
  );
}

interface BandsProps {
  bands: readonly { readonly watch: Watch; readonly spells: readonly AskedSpell[] }[];
  frame: TimePicture;
}

const Bands = memo(function Bands({ bands, frame }: BandsProps) {
  const id = useId();
  const { inner } = frame;
  return (
    <TimeGround frame={frame}>
      <defs>
        <Rock id={`${id}rock`} />
      </defs>
      {bands.map(({ watch: { setup }, spells }, lane) => (
        <g key={setup.name} transform={`translate(0,${lane * LANE + NAME})`}>
          <rect width={inner.width} height={BAND} className={held.band} />
          <Clipped width={inner.width} height={BAND}>
            {inSight(spells, frame).map(({ by, from, wide }) => (
              <rect
                key={`${by} ${from}`}
                x={from}
                width={wide}
                height={BAND}
                className={held[by]}
                fill={by === 'model' ? `url(#${id}rock)` : undefined}
              />
            ))}
          </Clipped>
        </g>
      ))}
    </TimeGround>
  );
});

const Words = memo(function Words({ bands, frame }: BandsProps) {
  return bands.map(({ watch: { setup }, spells }, lane) => (
    <g key={setup.name} transform={`translate(0,${lane * LANE})`}>
      <text y={14} className={styles.name}>
        {setup.name}
        {setup.mode === 'gauge' && <tspan className={styles.gauge}> – gauge mode: asks for nothing</tspan>}
      </text>
      {inSight(spells, frame).map(
        ({ by, from, wide }) =>
          wide >= ROOM_FOR_WORDS && (
            <text
              key={`${by} ${from}`}
              x={from + wide / 2}
              y={NAME + BAND / 2}
              dy="0.34em"
              className={`${styles.words} ${styles[`${by}Words`]}`}
            >
              {WORDS[by]}
            </text>
          ),
      )}
    </g>
  ));
});

/** What of the spells lies in the stretch of time that is shown. */
function inSight(spells: readonly AskedSpell[], { inner, x }: TimePicture) {
  return spells
    .map(({ by, fromS, toS }) => {
      const from = Math.max(0, x(fromS));
      return { by, from, wide: Math.min(inner.width, x(toS)) - from };
    })
    .filter(({ wide }) => wide > 0);
}

'use client';

import { scaleLinear, type ScaleLinear } from 'd3';
import { memo, useId, useMemo } from 'react';
import { loadAt } from '@/lib/ascent/figures';
import { supersaturation } from '@/lib/ascent/supersaturation';
import { sayDepth } from '@/lib/quantity/depth';
import type { Scene } from '../scene';
import { LeaderStrip, STRIP_HEIGHT } from '../axes/LeaderStrip';
import { printPercent } from '@/lib/quantity/percent';
import type { PictureProps } from '../picture-props';
import { Rock } from '../axes/Rock';
import { spacedOut } from '../axes/spaced-out';
import { supersaturationColumns, type SupersaturationColumns } from './supersaturation-columns';
import { Clipped } from '../axes/Clipped';
import { Levels } from '../axes/Levels';
import { columnPath } from '../axes/time-columns';
import { TimeGround } from '../axes/TimeGround';
import { timePicture, type TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import styles from './supersaturation.module.css';

const STRIPS = 2 * STRIP_HEIGHT + 6;
const RIM = { top: 16, bottom: 28 + STRIPS };
/** The lines are drawn to here at least, so that the limit is always in sight. */
const LEAST_TOP = 1.12;
/** Below this width names are cut short. */
const NARROW = 460;

interface SeriesFrame extends TimePicture {
  readonly y: ScaleLinear<number, number>;
  readonly now: SupersaturationColumns;
  readonly surfacing: SupersaturationColumns;
}

function seriesFrame(scene: Scene, width: number, height: number, view: PictureProps['view']): SeriesFrame {
  const frame = timePicture(scene, width, height, RIM, view);
  const now = supersaturationColumns(scene, frame.columns, 'now');
  const surfacing = supersaturationColumns(scene, frame.columns, 'surfacing');
  const top = Math.max(LEAST_TOP, largest(surfacing.most) * 1.06, largest(now.most) * 1.06);
  return { ...frame, now, surfacing, y: scaleLinear([0, top], [frame.inner.height, 0]) };
}

const largest = (values: Float32Array) => values.reduce((most, value) => Math.max(most, value), 0);

/** The largest supersaturation of the sixteen, here and as if surfaced, over time, under the limits; and which compartment has it. */
export function SupersaturationPicture({ scene, sample, cursorS, width, height, units, onCursor, view }: PictureProps) {
  const frame = useMemo(() => seriesFrame(scene, width, height, view), [scene, width, height, view]);
  const { inner, x } = frame;
  return (
    <TimePlot
      {...{ frame, width, height, cursorS, onCursor }}
      atCursor={(cursorX) => <Values scene={scene} sample={sample} frame={frame} cursorX={cursorX} />}
      tip={({ column }) => ({
        lines: [said('at your depth', frame.now, column), said('if you surfaced', frame.surfacing, column)],
      })}
    >
      <Ground
        scene={scene}
        frame={frame}
        namesRight={x(cursorS) < inner.width / 2}
        surface={`at ${sayDepth(0, units)}`}
      />
    </TimePlot>
  );
}

function said(name: string, { most, leader }: SupersaturationColumns, column: number): string {
  return `${name} ${printPercent(most[column]!)}${most[column]! > 0 ? `, compartment ${leader[column]}` : ''}`;
}

/** Where the lines stand under the cursor, named there. */
function Values({
  scene,
  sample,
  frame,
  cursorX,
}: {
  scene: Scene;
  sample: number;
  frame: SeriesFrame;
  cursorX: number;
}) {
  const { inner, y } = frame;
  const { timeline } = scene;
  const load = loadAt(timeline, sample);
  const short = inner.width < NARROW;
  const values = [
    {
      name: short ? 'surfaced' : 'if you surfaced',
      value: supersaturation(load, timeline.surfaceBar).value,
      className: styles.surfacingName,
    },
    {
      name: short ? 'here' : 'at your depth',
      value: supersaturation(load, timeline.ambientBar[sample]!).value,
      className: styles.nowName,
    },
  ];
  const left = cursorX > inner.width / 2;
  const tops = values.map(({ value }) => y(Math.max(0, value)));
  const places = spacedOut(
    tops.map((top) => top - 12),
    19,
    inner.height - 10,
  );
  return values.map(({ name, value, className }, index) => (
    <g key={name} className={className}>
      {value > 0 && <circle cx={cursorX} cy={tops[index]} r={5} />}
      <text x={cursorX + (left ? -10 : 10)} y={places[index]} dy="0.32em" textAnchor={left ? 'end' : 'start'}>
        {name} {printPercent(value)}
      </text>
    </g>
  ));
}

/** Everything that stays while the cursor moves. */
const Ground = memo(function Ground({
  scene,
  frame,
  namesRight,
  surface,
}: {
  scene: Scene;
  frame: SeriesFrame;
  namesRight: boolean;
  /** What the surface is called where there is little room. */
  surface: string;
}) {
  const id = useId();
  const { inner, x, y, columns, now, surfacing } = frame;
  const { timeS } = scene.timeline;
  const { low, high } = scene.dive.settings.gradientFactors;
  const at = (sample: number) => x(timeS[sample]!);
  const surfacingPath = columnPath(columns, at, (column) => y(surfacing.most[column]!));
  const nowPath = columnPath(columns, at, (column) => y(now.most[column]!));
  const leadsNow = useMemo(() => now.leader.map((leader, column) => (now.most[column]! > 0 ? leader : 0)), [now]);
  const leadsSurfacing = useMemo(
    () => surfacing.leader.map((leader, column) => (surfacing.most[column]! > 0 ? leader : 0)),
    [surfacing],
  );
  const limits = limitsOf(low, high, inner.width < NARROW);
  const namePlaces = spacedOut(
    limits.map(({ value }) => y(value) - 6),
    16,
    inner.height,
  );
  return (
    <TimeGround frame={frame} below={STRIPS}>
      <defs>
        <Rock id={`${id}rock`} />
        <clipPath id={`${id}past`}>
          <rect width={inner.width} height={Math.max(0, y(high))} />
        </clipPath>
      </defs>
      <Levels width={inner.width} levels={y.ticks(5).map((share) => ({ y: y(share), text: printPercent(share) }))} />
      <path d={`${surfacingPath}V${inner.height}H0Z`} fill={`url(#${id}rock)`} clipPath={`url(#${id}past)`} />
      {limits.map(({ value, strong }) => (
        <path key={value} d={`M0,${y(value)}H${inner.width}`} className={strong ? styles.limit : styles.limitFaint} />
      ))}
      <Clipped {...inner}>
        <path d={surfacingPath} className={styles.surfacing} />
        <path d={nowPath} className={styles.now} />
      </Clipped>
      {limits.map(({ name }, index) => (
        <text
          key={name}
          x={namesRight ? inner.width - 6 : 6}
          y={namePlaces[index]}
          textAnchor={namesRight ? 'end' : 'start'}
          className={styles.limitName}
        >
          {name}
        </text>
      ))}
      <LeaderStrip name="here" leaders={leadsNow} y={inner.height + 3} />
      <LeaderStrip name={surface} leaders={leadsSurfacing} y={inner.height + 6 + STRIP_HEIGHT} />
    </TimeGround>
  );
});

/** The limits to draw: the model's own, and under it the gradient factors the diver keeps to. */
function limitsOf(low: number, high: number, short: boolean) {
  const model = { value: 1, strong: high === 1, name: short ? 'limit' : 'the model’s limit' };
  const named = (value: number, name: string) => ({
    value,
    strong: value === high,
    name: short ? printPercent(value) : `${name} ${printPercent(value)}`,
  });
  if (high === 1 && low === 1) return [model];
  if (low === high) return [model, named(high, 'gradient factor')];
  return [...(high < 1 ? [model] : []), named(high, 'high gradient factor'), named(low, 'low gradient factor')];
}

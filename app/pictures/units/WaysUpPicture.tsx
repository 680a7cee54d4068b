'use client';

import { memo, useId, useMemo, type ReactNode } from 'react';
import { sampleAt, type Timeline } from '@/lib/dive/timeline';
import type { WayUp } from '@/lib/dive/way-up';
import { printDepth, sayDepth } from '@/lib/quantity/depth';
import type { HeldBreath } from '@/lib/rules/body/lungs';
import type { Watch } from '@/lib/rules/watch';
import { straightScale, type StraightScale } from '../../parts/straight-scale';
import { Clipped } from '../axes/Clipped';
import { Levels } from '../axes/Levels';
import { Rock } from '../axes/Rock';
import { spacedOut } from '../axes/spaced-out';
import { tenth, timeColumns } from '../axes/time-columns';
import { TimeGround } from '../axes/TimeGround';
import type { TimePicture } from '../axes/time-picture';
import { TimePlot } from '../axes/TimePlot';
import { timeScale } from '../axes/time-scale';
import { thinned } from '../axes/series-path';
import type { PictureProps } from '../picture-props';
import { ceilingEdges, divePath } from '../profile/dive-path';
import { roomForWords } from '../profile/event-lane';
import { EventMark } from '../profile/EventMark';
import { fastStretches } from '../profile/fast-stretches';
import { PROFILE_MARGIN } from '../profile/profile-scales';
import type { Scene } from '../scene';
import { BreathBands, BreathFigures } from './BreathBands';
import lane from '../profile/event-lane.module.css';
import shared from '../pictures.module.css';
import styles from './ways-up.module.css';

const RIM = { top: 6, bottom: 28 };
const LINE = 19;
const BODY = { wide: 74, narrow: 54 };
/** The rail of penalties, under the dive it is tied to. */
const RAIL = 24;
const GAP = 10;
/** Narrower, what a way shows has a line of its own. */
const NARROW = 560;
const MARK = 22;

type Worked = Pick<Scene, 'timeline' | 'figures'>;

interface Penalty {
  /** As the log numbers it. */
  readonly number: number;
  readonly word: string;
  readonly timeS: number;
}

interface WaysUpProps extends Pick<PictureProps, 'cursorS' | 'onCursor' | 'units' | 'width'> {
  scene: Worked;
  way: WayUp;
  /** The same dive with slower climbs, and its own way up. */
  slower: Worked & { readonly way: WayUp };
  /** The unit whose rail it is. */
  watch: Watch;
  penalties: readonly Penalty[];
  breaths: readonly HeldBreath[];
  /** What each of the four is called and shows, in their order. */
  said: readonly { readonly name: string; readonly shows: string }[];
}

const headOf = (width: number) => (width < NARROW ? 2 * LINE : LINE) + 3;
const bodyOf = (width: number) => (width < NARROW ? BODY.narrow : BODY.wide);
/** Where the drawing of a lane begins, under its heading. */
const bodyY = (lane: number, width: number) =>
  lane * (headOf(width) + bodyOf(width) + GAP) + (lane > 2 ? RAIL : 0) + headOf(width);

interface LanesFrame extends TimePicture {
  /** Metres to picture units, downward in each lane. */
  readonly y: StraightScale;
  readonly deepestM: number;
}

type LanesProps = Omit<WaysUpProps, 'cursorS' | 'onCursor'> & { readonly frame: LanesFrame };

/** How high the four are together. */
export const waysUpHeight = (width: number) =>
  RIM.top + 4 * (headOf(width) + bodyOf(width)) + 3 * GAP + RAIL + RIM.bottom;

/** One way up seen four ways over one time and over the ghost of one dive: as it was, slower, what rules laid on it, and a held breath. */
export function WaysUpPicture(props: WaysUpProps) {
  const { cursorS, onCursor, ...still } = props;
  const { scene, way, slower, units, width } = still;
  const height = waysUpHeight(width);
  const frame = useMemo(() => frameOf(scene.timeline, way, slower.way, width), [scene, way, slower.way, width]);
  return (
    <TimePlot
      {...{ frame, width, height, cursorS, onCursor }}
      words={<Words {...still} frame={frame} />}
      tip={({ sample }) => ({ lines: [`${printDepth(scene.timeline.depthM[sample]!, units)} as dived`] })}
    >
      <Lanes {...still} frame={frame} />
    </TimePlot>
  );
}

/** The time from the bottom to the surface, whichever of the two dives takes longer. */
function frameOf(timeline: Timeline, way: WayUp, slower: WayUp, width: number): LanesFrame {
  const margin = { ...RIM, left: PROFILE_MARGIN.left, right: PROFILE_MARGIN.right };
  const inner = { width: width - margin.left - margin.right, height: waysUpHeight(width) - RIM.top - RIM.bottom };
  const { diveNumber } = timeline.legs.find(({ endS }) => endS >= way.endS)!;
  const legs = timeline.legs.filter((leg) => leg.diveNumber === diveNumber && !leg.interval);
  const longS = Math.max(way.endS - way.startS, slower.endS - slower.startS);
  const view = { startS: way.startS - longS * 0.06, endS: way.startS + longS * 1.06 };
  const x = timeScale({ legs }, inner.width, view);
  const deepestM = timeline.legs.reduce((most, leg) => (leg.endS === way.startS ? leg.toM : most), 0);
  const y = straightScale([0, deepestM * 1.04], [0, bodyOf(width)]);
  return { margin, inner, timeline, x, y, deepestM, columns: timeColumns(timeline, x, inner.width) };
}

const Lanes = memo(function Lanes({ scene, way, slower, watch, breaths, units, frame, width }: LanesProps) {
  const rock = useId();
  const { inner, x, y, deepestM } = frame;
  const body = bodyOf(width);
  const ghost = `${divePath(scene.timeline, { x, y })}V0Z`;
  const bodies: ReactNode[] = [
    <Way key="0" {...{ scene, x, y, rock, inner }} className={shared.profile} />,
    <Way
      key="1"
      scene={slower}
      x={(timeS) => x(timeS - slower.way.startS + way.startS)}
      {...{ y, rock, inner }}
      className={styles.slower}
    />,
    <path key="2" d={fastStretches(watch, { x, y })} className={lane.tooFast} />,
    <BreathBands key="3" {...{ breaths, scene, x, body }} />,
  ];
  return (
    <TimeGround frame={frame}>
      <defs>
        <Rock id={rock} />
      </defs>
      {bodies.map((drawn, index) => (
        <g key={index} transform={`translate(0,${bodyY(index, width)})`}>
          <Clipped width={inner.width} height={body}>
            <path d={ghost} className={shared.strip} />
            {drawn}
          </Clipped>
          <Levels
            width={inner.width}
            levels={[0, deepestM].map((depthM) => ({
              y: y(depthM),
              text: sayDepth(depthM, units),
              surface: depthM === 0,
            }))}
          />
        </g>
      ))}
    </TimeGround>
  );
});

const Words = memo(function Words({ scene, penalties, breaths, said, frame, width }: LanesProps) {
  const { inner, x, y } = frame;
  const body = bodyOf(width);
  return (
    <>
      {said.map(({ name, shows }, index) => (
        <text key={name} y={bodyY(index, width) - headOf(width) + 14} className={styles.name}>
          {name}
          <tspan {...(width < NARROW ? { x: 0, dy: LINE } : { dx: 12 })} className={styles.said}>
            {shows}
          </tspan>
        </text>
      ))}
      <g transform={`translate(0,${bodyY(2, width)})`}>
        <Rail {...{ penalties, x, y, body, width: inner.width, timeline: scene.timeline }} />
      </g>
      <g transform={`translate(0,${bodyY(3, width)})`}>
        <BreathFigures {...{ breaths, x, body, width: inner.width }} />
      </g>
    </>
  );
});

interface WayProps {
  scene: Worked;
  x: (timeS: number) => number;
  y: StraightScale;
  rock: string;
  inner: TimePicture['inner'];
  className: string | undefined;
}

/** A way up under the ceiling it had. */
function Way({ scene: { timeline, figures }, x, y, rock, inner, className }: WayProps) {
  const scales = { x, y };
  const edges = ceilingEdges(timeline, figures.ceilingM, thinned(timeline.length, 4 * inner.width), scales);
  return (
    <>
      <path d={edges.map(({ startX, path }) => `${path}V0H${tenth(startX)}Z`).join('')} fill={`url(#${rock})`} />
      <path d={edges.map(({ path }) => path).join('')} className={shared.ceiling} />
      <path d={divePath(timeline, scales)} className={className} />
    </>
  );
}

/** What rules laid on the diver, each tied to its moment on the dive. */
function Rail({
  penalties,
  x,
  y,
  body,
  width,
  timeline,
}: {
  penalties: readonly Penalty[];
  body: number;
  x: TimePicture['x'];
  y: StraightScale;
  width: number;
  timeline: Timeline;
}) {
  const railY = body + RAIL / 2 + 2;
  const places = spacedOut(
    penalties.map(({ timeS }) => x(timeS)),
    MARK,
    width,
  );
  const marks = penalties.map(({ number }, index) => ({
    from: number,
    to: number,
    x: places[index]!,
    width: MARK,
    label: `${number}`,
    voice: 'byRule' as const,
  }));
  const worded = roomForWords(
    marks,
    penalties.map(({ word }) => word),
    width,
  );
  return (
    <>
      <path d={`M0,${railY}H${width}`} className={styles.rail} />
      {penalties.map(({ number, word, timeS }, index) => (
        <g key={number}>
          <path
            d={`M${tenth(x(timeS))},${tenth(y(timeline.depthM[sampleAt(timeline, timeS)]!))}V${body}L${tenth(places[index]!)},${railY}`}
            className={styles.tie}
          />
          <g transform={`translate(${tenth(places[index]!)},${railY})`}>
            <EventMark voice="byRule" label={`${number}`} width={MARK} />
            {worded[index] && (
              <text x={MARK / 2 + 4} dy="0.35em" className={styles.word}>
                {word}
              </text>
            )}
          </g>
        </g>
      ))}
    </>
  );
}

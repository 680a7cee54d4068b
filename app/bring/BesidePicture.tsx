'use client';

import { line, scaleLinear } from 'd3';
import type { SideBySide } from '@/lib/files/settings/unit-and-model';
import type { UnitChannel } from '@/lib/files/records/record';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { printClock } from '@/lib/quantity/duration';
import { printAs } from '@/lib/sayings/measures';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { ChartFrame } from '../parts/ChartFrame';
import { usePreferences } from '../parts/preferences';
import { useWidth } from '../pictures/hand/use-width';
import { TimeFoot } from './TimeFoot';
import styles from './bring.module.css';

const HEIGHT = 190;
const MARGIN = { top: 26, right: 12, bottom: 34, left: 56 };

interface Lane {
  readonly title: string;
  readonly channel: UnitChannel;
  /** From the channel's own unit to the picture's; NaN is not drawn. */
  readonly value: (figure: number) => number;
  readonly downward: boolean;
  readonly least: number;
}

/** Two lanes at most: minutes without stops, and the depth asked to stay below. */
function lanesOf(rows: readonly SideBySide[], units: UnitSystem): Lane[] {
  const tells = (channel: UnitChannel) => rows.some(({ unit }) => Number.isFinite(unit[channel]));
  const lanes: Lane[] = [];
  if (tells('noStopS'))
    lanes.push({
      title: 'No-stop time, min',
      channel: 'noStopS',
      value: (s) => Math.min(NO_STOP_CAP_MIN, s / 60),
      downward: false,
      least: 20,
    });
  const depth = tells('ceilingM') ? 'ceilingM' : tells('stopDepthM') ? 'stopDepthM' : undefined;
  const [unit, unitM] = units === 'metric' ? ['m', 1] : ['ft', METRES_PER_FOOT];
  if (depth)
    lanes.push({
      title: `${depth === 'ceilingM' ? 'Ceiling' : 'Stop depth'}, ${unit}`,
      channel: depth,
      value: (m) => m / unitM,
      downward: true,
      least: 3 / unitM,
    });
  return lanes;
}

/** What the unit showed, as rings, over what the model says, as a line; dashed, the model under the settings found. */
export function BesidePicture({
  rows,
  explained,
}: {
  rows: readonly SideBySide[];
  explained: readonly SideBySide[] | undefined;
}) {
  const units = usePreferences((preferences) => preferences.units);
  const { ref, width } = useWidth<HTMLDivElement>(720);
  const lanes = lanesOf(rows, units);
  return (
    <ChartFrame
      title="The unit beside the model"
      headingLevel={3}
      sentence={`At ${rows.length} moments: rings are what the unit showed, the line is the model under the settings above${explained ? ', and the dashed line the model under the settings found' : ''}. Where they part, the unit goes by other settings, other rules or both.`}
      rows={rows}
      columns={[
        { heading: 'Time', cell: ({ timeS }) => printClock(timeS) },
        { heading: 'Depth', numeric: true, cell: ({ depthM }) => printAs('depth', depthM, units) },
        { heading: 'Unit: no-stop', numeric: true, cell: ({ unit }) => minutesText(unit.noStopS, units) },
        { heading: 'Model: no-stop', numeric: true, cell: ({ model }) => minutesText(model.noStopS, units) },
        { heading: 'Unit: ceiling or stop', numeric: true, cell: ({ unit }) => depthText(unit, units) },
        { heading: 'Model: ceiling or stop', numeric: true, cell: ({ model }) => depthText(model, units) },
      ]}
    >
      <div ref={ref}>
        {lanes.map((lane) => (
          <LanePicture key={lane.channel} lane={lane} rows={rows} explained={explained} width={width} />
        ))}
        <p className={styles.key} aria-hidden="true">
          <span className={styles.keyUnit} /> the unit <span className={styles.keyKept} /> the model
          {explained && (
            <>
              <span className={styles.keyFound} /> the model under the settings found
            </>
          )}
        </p>
      </div>
    </ChartFrame>
  );
}

function LanePicture({
  lane,
  rows,
  explained,
  width,
}: {
  lane: Lane;
  rows: readonly SideBySide[];
  explained: readonly SideBySide[] | undefined;
  width: number;
}) {
  const { channel, value, downward } = lane;
  const endS = rows.at(-1)?.timeS ?? 60;
  const told = (row: SideBySide, of: 'unit' | 'model') => value(row[of][channel]);
  const most = Math.max(
    lane.least,
    ...rows.flatMap((row) => [told(row, 'unit'), told(row, 'model')]).filter(Number.isFinite),
  );
  const x = scaleLinear([0, endS], [MARGIN.left, width - MARGIN.right]);
  const range: [number, number] = downward
    ? [MARGIN.top, HEIGHT - MARGIN.bottom]
    : [HEIGHT - MARGIN.bottom, MARGIN.top];
  const y = scaleLinear([0, most * 1.05], range);
  const curve = (all: readonly SideBySide[]) =>
    line<SideBySide>()
      .defined((row) => Number.isFinite(told(row, 'model')))
      .x(({ timeS }) => x(timeS))
      .y((row) => y(told(row, 'model')))(all as SideBySide[]) ?? '';
  return (
    <svg viewBox={`0 0 ${width} ${HEIGHT}`} width={width} height={HEIGHT} className={styles.picture} aria-hidden="true">
      <text x={MARGIN.left} y={14} className={styles.laneTitle}>
        {lane.title}
      </text>
      {y.ticks(4).map((tick) => (
        <g key={tick}>
          <path className={styles.grid} d={`M${MARGIN.left} ${y(tick)}H${width - MARGIN.right}`} />
          <text x={MARGIN.left - 8} y={y(tick)} className={styles.sideLabel}>
            {tick}
          </text>
        </g>
      ))}
      <TimeFoot endS={endS} x={x} y={HEIGHT - MARGIN.bottom} />
      {rows.map(
        (row, index) =>
          Number.isFinite(told(row, 'unit')) && (
            <circle key={index} className={styles.unitMark} cx={x(row.timeS)} cy={y(told(row, 'unit'))} r={2.6} />
          ),
      )}
      <path className={styles.kept} d={curve(rows)} />
      {explained && <path className={styles.found} d={curve(explained)} />}
    </svg>
  );
}

function minutesText(noStopS: number, units: UnitSystem): string {
  return Number.isNaN(noStopS) ? '–' : printAs('noStopMin', noStopS / 60, units);
}

function depthText(
  { ceilingM, stopDepthM, stopTimeS }: Readonly<Record<UnitChannel, number>>,
  units: UnitSystem,
): string {
  const parts = [
    Number.isFinite(ceilingM) && ceilingM > 0 ? printAs('ceilingM', ceilingM, units) : '',
    Number.isFinite(stopDepthM) && stopDepthM > 0
      ? `stop ${printAs('stopM', stopDepthM, units)}${Number.isFinite(stopTimeS) ? `, ${printAs('stopMin', stopTimeS / 60, units)}` : ''}`
      : '',
  ].filter((part) => part !== '');
  return parts.length > 0 ? parts.join('; ') : '–';
}

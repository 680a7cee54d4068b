'use client';

import { line, scaleLinear } from 'd3';
import { useMemo } from 'react';
import type { SideBySide } from '@/lib/files/settings/unit-and-model';
import type { UnitChannel } from '@/lib/files/records/record';
import { NO_STOP_CAP_MIN } from '@/lib/ascent/no-stop-cap';
import { printClock } from '@/lib/quantity/duration';
import { printAs } from '@/lib/sayings/measures';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { ChartFrame } from '../../parts/ChartFrame';
import { usePreferences } from '../../parts/preferences';
import { Levels } from '../../pictures/axes/Levels';
import { markPath } from '../../pictures/axes/mark-shapes';
import { recordFrame } from '../../pictures/axes/time-picture';
import { TimeGround } from '../../pictures/axes/TimeGround';
import { TimePlot } from '../../pictures/axes/TimePlot';
import { useWidth } from '../../parts/use-width';
import styles from './record-picture.module.css';

const HEIGHT = 190;
const RIM = { top: 26, bottom: 34 };

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
      <div ref={ref} className={styles.lanes}>
        {lanes.map((lane) => (
          <LanePicture key={lane.channel} lane={lane} rows={rows} explained={explained} width={width} units={units} />
        ))}
        <p className={styles.key} aria-hidden="true">
          <span>
            <i className={styles.keyUnit} /> the unit
          </span>
          <span>
            <i /> the model
          </span>
          {explained && (
            <span>
              <i className={styles.keyFound} /> the model under the settings found
            </span>
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
  units,
}: {
  lane: Lane;
  rows: readonly SideBySide[];
  explained: readonly SideBySide[] | undefined;
  width: number;
  units: UnitSystem;
}) {
  const { channel, value, downward } = lane;
  const frame = useMemo(
    () =>
      recordFrame(
        rows.map(({ timeS }) => timeS),
        width,
        HEIGHT,
        RIM,
      ),
    [rows, width],
  );
  const { inner, x } = frame;
  const told = (row: SideBySide, of: 'unit' | 'model') => value(row[of][channel]);
  const most = Math.max(
    lane.least,
    ...rows.flatMap((row) => [told(row, 'unit'), told(row, 'model')]).filter(Number.isFinite),
  );
  const y = scaleLinear([0, most * 1.05], downward ? [0, inner.height] : [inner.height, 0]);
  const figureText = (of: SideBySide['unit']) =>
    channel === 'noStopS' ? minutesText(of.noStopS, units) : depthText(of, units);
  const curve = (all: readonly SideBySide[]) =>
    line<SideBySide>()
      .defined((row) => Number.isFinite(told(row, 'model')))
      .x(({ timeS }) => x(timeS))
      .y((row) => y(told(row, 'model')))(all as SideBySide[]) ?? '';
  return (
    <div className={styles.canvas}>
      <TimePlot
        frame={frame}
        width={width}
        height={HEIGHT}
        tip={({ sample }) => ({
          lines: [`the unit ${figureText(rows[sample]!.unit)}`, `the model ${figureText(rows[sample]!.model)}`],
        })}
      >
        <text x={0} y={-12} className={styles.laneTitle}>
          {lane.title}
        </text>
        <TimeGround frame={frame}>
          <Levels width={inner.width} levels={y.ticks(4).map((tick) => ({ y: y(tick), text: String(tick) }))} />
          <path
            className={styles.unitMark}
            d={rows
              .filter((row) => Number.isFinite(told(row, 'unit')))
              .map((row) => markPath('round', x(row.timeS), y(told(row, 'unit')), 2.6))
              .join('')}
          />
          <path className={styles.kept} d={curve(rows)} />
          {explained && <path className={styles.found} d={curve(explained)} />}
        </TimeGround>
      </TimePlot>
    </div>
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

import Papa from 'papaparse';
import { cautions } from '../../content/cautions';
import { fixed } from '../quantity/number';
import { saySettings } from './bench-words';
import { sayAbout, type BenchSettings, type BenchUnit, type Readings, type SheetAbout } from './bench-settings';
import { depthDeviations, driftOf, hysteresisOf, type DepthDeviation } from './deviations';
import type { Band, Expected } from './expected';
import { TOLERANCE_SOURCE } from './tolerance-source';
import { verdictOf } from './verdict';

/** One unit with what it should have shown and what it did. */
export interface UnitSheet {
  readonly unit: BenchUnit;
  readonly expected: readonly Expected[];
  readonly readings: Readings;
}

const FIELDS = [
  'row',
  'unit',
  'checkpoint',
  'time_s',
  'gauge_m',
  'gauge_bar',
  'expected_depth_m',
  'shown_depth_m',
  'deviation_m',
  'allowed_m',
  'depth',
  'expected_no_stop_min',
  'shown_no_stop_min',
  'expected_stop_m',
  'shown_stop_m',
  'expected_rate_alarm',
  'rate_alarm',
  'expected_safety_stop',
  'safety_stop',
  'expected_no_fly_h',
  'shown_no_fly_h',
  'fault',
  'text',
] as const;
type Row = Partial<Record<(typeof FIELDS)[number], string | number>>;

/**
 * A whole sheet as CSV in metres, bar and minutes: cautions and settings as remarks, a row a reading, then hysteresis,
 * drift and verdict of each unit.
 */
export function writeSheetCsv(
  title: string,
  about: SheetAbout,
  settings: BenchSettings,
  sheets: readonly UnitSheet[],
): string {
  const rows = sheets.flatMap((sheet) => rowsOf(sheet, settings));
  const table = Papa.unparse(
    { fields: [...FIELDS], data: rows.map((row) => FIELDS.map((field) => row[field] ?? '')) },
    { newline: '\n', escapeFormulae: true },
  );
  const remarks = [
    cautions.general,
    cautions.chamber,
    TOLERANCE_SOURCE,
    title,
    ...sayAbout(about),
    saySettings(settings, 'metric'),
  ];
  return `${remarks.map((text) => `"# ${text.replaceAll('"', '""').replace(/\s+/g, ' ')}"\n`).join('')}${table}\n`;
}

function rowsOf({ unit, expected, readings }: UnitSheet, settings: BenchSettings): Row[] {
  const deviations = depthDeviations(expected, readings, settings);
  const { headline, reasons } = verdictOf(unit, expected, readings, settings, 'metric');
  const own = { unit: unit.name };
  return [
    ...deviations.map((deviation): Row => ({ row: 'reading', ...own, ...readingRow(deviation, readings) })),
    ...hysteresisOf(deviations).map(({ gaugeM, differenceM }): Row => ({
      row: 'hysteresis',
      ...own,
      gauge_m: gaugeM,
      deviation_m: metres(differenceM),
    })),
    ...driftOf(deviations).map(({ gaugeM, driftM, overS }): Row => ({
      row: 'drift',
      ...own,
      gauge_m: gaugeM,
      time_s: overS,
      deviation_m: metres(driftM),
    })),
    { row: 'verdict', ...own, text: [headline, ...reasons].join(' ') },
  ];
}

function readingRow({ expected, standing, deviationM, allowedM }: DepthDeviation, readings: Readings): Row {
  const { checkpoint, noStopMin, stopM, rateAlarm, safetyStop, noFlyH } = expected;
  const reading = readings[checkpoint.name] ?? {};
  return {
    checkpoint: checkpoint.name,
    time_s: expected.timeS,
    gauge_m: expected.gaugeM,
    gauge_bar: plain(expected.gaugeBar, 3),
    expected_depth_m: plain(expected.depthM, 2),
    shown_depth_m: reading.depthM ?? '',
    deviation_m: deviationM === undefined ? '' : metres(deviationM),
    allowed_m: allowedM === undefined ? '' : plain(allowedM, 3),
    depth: standing,
    expected_no_stop_min: noStopMin ? bandText(noStopMin, 0) : '',
    shown_no_stop_min: reading.noStopMin === 'over' ? 'over 99' : (reading.noStopMin ?? ''),
    expected_stop_m: stopM ? bandText(stopM, 1) : '',
    shown_stop_m: reading.stopM ?? '',
    expected_rate_alarm: yesNo(rateAlarm),
    rate_alarm: yesNo(reading.rateAlarm),
    expected_safety_stop: safetyStop ?? '',
    safety_stop: yesNo(reading.safetyStop),
    expected_no_fly_h: noFlyH ? bandText(noFlyH, 0) : '',
    shown_no_fly_h: reading.noFlyH ?? '',
    fault: reading.fault ?? '',
  };
}

function yesNo(answer: boolean | null | undefined): string {
  return answer === null || answer === undefined ? '' : answer ? 'yes' : 'no';
}

function bandText({ from, to }: Band, decimals: number): string {
  const end = (value: number) => (Number.isFinite(value) ? plain(value, decimals) : 'over 99');
  return end(from) === end(to) ? end(to) : `${end(from)} to ${end(to)}`;
}

/** A number for a file: a plain minus sign. */
function plain(value: number, decimals: number): string {
  return fixed(value, decimals).replace('−', '-');
}

function metres(value: number): number {
  return Number(value.toFixed(3)) + 0;
}

import Papa from 'papaparse';
import { gasName } from '@/lib/physics/gas';
import { printClock } from '@/lib/quantity/duration';
import { numberAs } from '@/lib/sayings/measures';
import type { WayOutReading } from './ways-out-readings';
import type { Readings, SampleReadings } from './readings-of';

const COLUMNS: readonly (readonly [string, (sample: SampleReadings) => string | number])[] = [
  ['time s', (s) => s.timeS],
  ['depth m', (s) => round(s.depthM, 3)],
  ['ambient bar', (s) => round(s.ambientBar, 5)],
  ['gas', (s) => gasName(s.gas)],
  ['no-stop min', noStop],
  ['ceiling m', (s) => numberAs('ceilingM', s.ceilingM, 3)],
  ['state', (s) => s.state],
  [
    'required stops',
    (s) =>
      s.requiredStops.map((stop) => `${numberAs('stopMin', stop.minutes, 3)} min at ${stop.depthM} m`).join('; ') ||
      'none',
  ],
  [
    'time to surface min',
    (s) => (s.timeToSurfaceMin === null ? 'never' : numberAs('timeToSurfaceMin', s.timeToSurfaceMin, 3)),
  ],
  ['supersaturation', (s) => round(s.supersaturation, 4)],
  ['surfacing supersaturation', (s) => round(s.surfacingSupersaturation, 4)],
  ['leading compartment', (s) => s.leadingCompartment],
  ['oxygen bar', (s) => round(s.oxygen.pO2Bar, 3)],
  ['oxygen of single limit %', (s) => round(s.oxygen.singleFraction * 100, 2)],
  ['oxygen of daily limit %', (s) => round(s.oxygen.dailyFraction * 100, 2)],
  ['pulmonary units', (s) => round(s.oxygen.pulmonaryUnits, 2)],
  ['gas density g/L', (s) => round(s.gasDensityGL, 3)],
];

/** While the way up itself needs a stop, what is left to an instant ascent is no time left. */
function noStop({ state, noStopMin }: SampleReadings): string | number {
  if (state === 'filling') return 'none';
  return noStopMin === null ? 'over 99' : numberAs('noStopMin', noStopMin, 3);
}

/** Two columns a cylinder: its gauge as ideal and as real gas. */
function cylinderColumns({ samples }: Readings): typeof COLUMNS {
  return (samples[0]?.cylinders ?? []).flatMap(({ name }, index) => [
    [`${name} bar, ideal gas`, (s: SampleReadings) => round(s.cylinders[index]!.pressureBar, 1)] as const,
    [`${name} bar, real gas`, (s: SampleReadings) => round(s.cylinders[index]!.realPressureBar, 1)] as const,
  ]);
}

/** One row a sample, the caution first as remarks. */
export function readingsAsCsv(readings: Readings): string {
  const tensions = (gas: 'nitrogenBar' | 'heliumBar', name: string) =>
    Array.from(
      { length: 16 },
      (_, c) => [`${name} ${c + 1} bar`, (s: SampleReadings) => round(s[gas][c]!, 6)] as const,
    );
  const columns = [
    ...COLUMNS,
    ...cylinderColumns(readings),
    ...tensions('nitrogenBar', 'nitrogen'),
    ...tensions('heliumBar', 'helium'),
  ];
  const table = Papa.unparse(
    { fields: columns.map(([name]) => name), data: readings.samples.map((s) => columns.map(([, cell]) => cell(s))) },
    { newline: '\n' },
  );
  return `${remarks(readings)}${table}\n`;
}

/** A table for people, the caution first. */
export function readingsAsText(readings: Readings): string {
  const columns: typeof COLUMNS = [
    ['time', (s) => printClock(s.timeS)],
    ...COLUMNS.slice(1),
    ...cylinderColumns(readings),
  ];
  const rows = [
    columns.map(([name]) => name),
    ...readings.samples.map((s) => columns.map(([, cell]) => String(cell(s)))),
  ];
  const widths = columns.map((_, index) => Math.max(...rows.map((row) => row[index]!.length)));
  const lines = rows.map((row) =>
    row
      .map((cell, index) => cell.padStart(widths[index]!))
      .join('  ')
      .trimEnd(),
  );
  return `${remarks(readings)}${lines.join('\n')}\n`;
}

function remarks({ caution, unknown, warnings, events, waysOut = [], howMuchMore = [] }: Readings): string {
  const told = [
    ...warnings.map((warning) => `# Line ${warning.line}: ${warning.message} ${warning.mend}\n`),
    ...events.map(({ text }) => `# ${text}\n`),
    ...[...waysOut, ...howMuchMore].map((way) => `# ${sayWay(way)}\n${scriptRemarks(way)}`),
  ];
  return `# ${caution}\n# ${unknown}\n${told.join('')}`;
}

/** The changed dive under its sentence, each line of it a remark of its own. */
function scriptRemarks(way: WayOutReading): string {
  if ('none' in way) return '';
  return way.script
    .trimEnd()
    .split(/\r?\n/)
    .map((line) => `#   ${line}`.trimEnd() + '\n')
    .join('');
}

function sayWay(way: WayOutReading): string {
  return 'none' in way || way.cost === ''
    ? `${way.lever}: ${way.text}`
    : `${way.lever}: ${way.text} Its cost: ${way.cost}.`;
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

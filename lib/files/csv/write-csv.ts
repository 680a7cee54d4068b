import { cautions } from '../../../content/cautions';
import type { Figures } from '../../ascent/figures';
import { stopChanges } from '../../ascent/stop-changes';
import { gasAt, type Timeline } from '../../dive/timeline';
import { writeGas } from '../../dive/gas-text';
import { plainNumber, tidy } from '../../quantity/number';
import { numberAs } from '../../sayings/measures';
import { COMPARTMENTS } from '../../tissue/coefficients';
import { UNIT_CHANNELS, type Recording, type UnitChannel } from '../records/record';
import { lengthS, surfaceIntervals } from '../records/surface-intervals';
import { printFactors } from '../../quantity/percent';

const CHANNEL_HEADINGS: Readonly<Record<UnitChannel, string>> = {
  noStopS: 'no_stop_time_s',
  ceilingM: 'ceiling_m',
  stopDepthM: 'stop_depth_m',
  stopTimeS: 'stop_time_s',
};

/** A remark at the top of a file; in quotation marks, so that a spreadsheet keeps it in one cell. */
function remark(text: string): string {
  return `"# ${text.replaceAll('"', '""')}"`;
}

/** A number as text, exactly; nothing where there is none. */
function cell(value: number | undefined): string {
  return value === undefined || !Number.isFinite(value) ? '' : plainNumber(value);
}

/**
 * Writes recordings as CSV that reads back the same: one row a sample, seconds and metres, decimal points. Times count
 * from the first dive's beginning where the dives share a clock. Water, altitude and the model's settings are left out.
 */
export function writeProfileCsv(recordings: readonly Recording[]): string {
  const channels = UNIT_CHANNELS.filter((channel) => recordings.some(({ unit }) => unit[channel]));
  const hot = recordings.some(({ temperatureC }) => temperatureC);
  const gases = recordings.some(({ switches }) => switches.length > 0);
  const headings = [
    ...(recordings.length > 1 ? ['dive'] : []),
    'time_s',
    'depth_m',
    ...(gases ? ['gas'] : []),
    ...channels.map((channel) => CHANNEL_HEADINGS[channel]),
    ...(hot ? ['temperature_c'] : []),
  ];
  const lines = [
    remark(cautions.general),
    remark('A depth profile. The water, the altitude and the settings of the model are not in this file.'),
    headings.join(','),
  ];
  const clocks = sharedClock(recordings);
  recordings.forEach((recording, number) => {
    const { timeS, depthM, switches, unit, temperatureC } = recording;
    const clockS = clocks[number]!;
    let next = 0;
    let gas = '';
    for (let i = 0; i < timeS.length; i += 1) {
      for (; next < switches.length && switches[next]!.timeS <= timeS[i]!; next += 1)
        gas = writeGas(switches[next]!.gas);
      const cells = [cell(tidy(timeS[i]! + clockS)), cell(depthM[i])];
      if (recordings.length > 1) cells.unshift(String(number + 1));
      if (gases) cells.push(gas);
      for (const channel of channels) cells.push(cell(unit[channel]?.[i]));
      if (hot) cells.push(cell(temperatureC?.[i]));
      lines.push(cells.join(','));
    }
  });
  return `${lines.join('\n')}\n`;
}

/** When each recording begins on one clock, s; all at 0 where the time between any two of them is not known. */
function sharedClock(recordings: readonly Recording[]): number[] {
  const intervals = surfaceIntervals(recordings);
  if (intervals.includes(undefined)) return recordings.map(() => 0);
  let endS = 0;
  return recordings.map((recording, i) => {
    const startS = i === 0 ? 0 : tidy(endS + intervals[i]!);
    endS = startS + lengthS(recording);
    return startS;
  });
}

/** Figures are written to this many decimals; times and depths exactly. */
const DECIMALS = 4;

/**
 * Writes what the model says at every sample of a timeline as CSV: time and depth, the gas, the no-stop time and the
 * ceiling with the compartment that leads each, how the diver stands, and every compartment's inert gas. Where the way up
 * itself needs a stop no time is left, as every reading says it. Reads back as a profile with figures.
 */
export function writeReadingsCsv(timeline: Timeline, figures: Figures): string {
  const compartments = Array.from({ length: COMPARTMENTS }, (_, c) => c + 1);
  const gases = timeline.hasHelium ? ['n2', 'he'] : ['n2'];
  const headings = [
    'dive',
    'time_s',
    'depth_m',
    'gas',
    'ambient_bar',
    'no_stop_time_min',
    'ceiling_m',
    'leading_compartment',
    'state',
    ...gases.flatMap((gas) => compartments.map((c) => `compartment_${c}_${gas}_bar`)),
  ];
  const { water, altitudeM } = timeline.conditions;
  const { gradientFactors } = figures.limits;
  const lines = [
    remark(cautions.general),
    remark(cautions.unknown),
    remark(
      `Gradient factors ${printFactors(gradientFactors)}, ${water} water, altitude ${altitudeM} m. An empty no-stop time has no end; none is left while the way up itself needs a stop.`,
    ),
    headings.join(','),
  ];
  const short = (value: number) => (Number.isFinite(value) ? String(Number(value.toFixed(DECIMALS))) : '');
  const changes = stopChanges(timeline, figures);
  let change = 0;
  for (let i = 0; i < timeline.length; i += 1) {
    const leg = timeline.legs[timeline.leg[i]!]!;
    while (change + 1 < changes.length && changes[change + 1]!.timeS <= timeline.timeS[i]!) change += 1;
    const { state } = changes[change]!;
    const noStopMin = state === 'filling' ? 0 : figures.noStopMin[i]!;
    const cells = [
      String(leg.diveNumber + 1),
      cell(timeline.timeS[i]),
      cell(timeline.depthM[i]),
      writeGas(gasAt(timeline, i)),
      short(timeline.ambientBar[i]!),
      short(numberAs('noStopMin', noStopMin, DECIMALS)),
      short(numberAs('ceilingM', figures.ceilingM[i]!, DECIMALS)),
      String(figures.ceilingLeader[i] || figures.noStopLeader[i] || ''),
      state,
    ];
    for (let c = 0; c < COMPARTMENTS; c += 1) cells.push(short(timeline.nitrogenBar[i * COMPARTMENTS + c]!));
    if (timeline.hasHelium)
      for (let c = 0; c < COMPARTMENTS; c += 1) cells.push(short(timeline.heliumBar[i * COMPARTMENTS + c]!));
    lines.push(cells.join(','));
  }
  return `${lines.join('\n')}\n`;
}

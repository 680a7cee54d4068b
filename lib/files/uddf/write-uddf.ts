import { cautions } from '../../../content/cautions';
import { AIR, nitrogenFraction, sameGas, gasName, type Gas } from '../../physics/gas';
import { STANDARD_GRAVITY, barPerMetre } from '../../physics/water';
import { plainNumber, tidy } from '../../quantity/number';
import type { Recording } from '../records/record';
import { ZERO_CELSIUS_K } from '../../exposure/gas-density';

/** The version of the standard the files are written to. */
const UDDF_VERSION = '3.2.2';
const NAMESPACE = 'http://www.streit.cc/uddf/3.2/';

/**
 * Writes recordings as a UDDF file that reads back the same: profiles, gases and their changes, intervals, and the
 * unit's no-stop times and stops. The standard has no place for a ceiling in a waypoint, nor here for the model's
 * settings: those are left out. SI units; no clock: the time of writing goes in only if given.
 * @param writtenAt date and time of writing, ISO 8601
 */
export function writeUddf(
  recordings: readonly Recording[],
  { writtenAt }: { writtenAt?: string | undefined } = {},
): string {
  const mixes = mixesOf(recordings);
  const lines = [
    '<?xml version="1.0" encoding="utf-8"?>',
    `<!-- ${comment(cautions.general)} -->`,
    `<uddf xmlns="${NAMESPACE}" version="${UDDF_VERSION}">`,
    '  <generator>',
    '    <name>Halftime</name>',
    '    <type>logbook</type>',
    ...(writtenAt === undefined ? [] : [`    <datetime>${escaped(writtenAt)}</datetime>`]),
    '  </generator>',
    ...siteLines(recordings[0]),
    '  <gasdefinitions>',
    ...mixes.flatMap((gas, i) => mixLines(gas, i)),
    '  </gasdefinitions>',
    '  <profiledata>',
    '    <repetitiongroup id="group-1">',
  ];
  recordings.forEach((recording, i) => pushDive(lines, recording, i, mixes));
  lines.push('    </repetitiongroup>', '  </profiledata>', '</uddf>', '');
  return lines.join('\n');
}

/** Every gas breathed, each once; air where a recording does not tell. */
function mixesOf(recordings: readonly Recording[]): Gas[] {
  const mixes: Gas[] = [];
  for (const { switches } of recordings) {
    for (const { gas } of switches) if (!mixes.some((other) => sameGas(other, gas))) mixes.push(gas);
  }
  return mixes.length > 0 ? mixes : [AIR];
}

function mixLines(gas: Gas, index: number): string[] {
  return [
    `    <mix id="mix-${index + 1}">`,
    `      <name>${escaped(gasName(gas))}</name>`,
    `      <o2>${plainNumber(gas.o2)}</o2>`,
    `      <n2>${plainNumber(nitrogenFraction(gas))}</n2>`,
    `      <he>${plainNumber(gas.he)}</he>`,
    '      <ar>0</ar>',
    '      <h2>0</h2>',
    '    </mix>',
  ];
}

/** The site of the dives, where there is anything to tell: element names from memory. */
function siteLines(recording: Recording | undefined): string[] {
  const { altitudeM, water } = recording ?? {};
  if (altitudeM === undefined && water === undefined) return [];
  return [
    '  <divesite>',
    '    <site id="site-1">',
    '      <name>Site 1</name>',
    ...(altitudeM === undefined
      ? []
      : [
          '      <geography>',
          '        <location>not told</location>',
          `        <altitude>${plainNumber(altitudeM)}</altitude>`,
          '      </geography>',
        ]),
    // The depth gauge's own convention is no density a water has, so it is left out and comes back as the default.
    ...(water === undefined || water === 'reference'
      ? []
      : [
          '      <sitedata>',
          `        <density>${plainNumber(tidy((barPerMetre(water) * 1e5) / STANDARD_GRAVITY))}</density>`,
          '      </sitedata>',
        ]),
    '    </site>',
    '  </divesite>',
  ];
}

function pushDive(lines: string[], recording: Recording, index: number, mixes: readonly Gas[]): void {
  const { altitudeM, water, startedAt, intervalBeforeS } = recording;
  lines.push(`      <dive id="dive-${index + 1}">`, '        <informationbeforedive>');
  if (altitudeM !== undefined || water !== undefined) lines.push('          <link ref="site-1"/>');
  lines.push(`          <divenumber>${index + 1}</divenumber>`);
  if (startedAt !== undefined) lines.push(`          <datetime>${escaped(startedAt)}</datetime>`);
  if (altitudeM !== undefined) lines.push(`          <altitude>${plainNumber(altitudeM)}</altitude>`);
  if (intervalBeforeS !== undefined) {
    const passed = Number.isFinite(intervalBeforeS)
      ? `<passedtime>${plainNumber(intervalBeforeS)}</passedtime>`
      : '<infinity/>';
    lines.push(`          <surfaceintervalbeforedive>${passed}</surfaceintervalbeforedive>`);
  }
  lines.push('        </informationbeforedive>', '        <samples>');
  pushWaypoints(lines, recording, mixes);
  lines.push('        </samples>', '      </dive>');
}

function pushWaypoints(lines: string[], recording: Recording, mixes: readonly Gas[]): void {
  const { timeS, depthM, switches, unit, temperatureC } = recording;
  const { noStopS, stopDepthM, stopTimeS } = unit;
  const told = (values: Float64Array | undefined, i: number) => values !== undefined && Number.isFinite(values[i]!);
  let next = 0;
  for (let i = 0; i < timeS.length; i += 1) {
    let ref = '';
    for (; next < switches.length && switches[next]!.timeS <= timeS[i]!; next += 1) {
      ref = `mix-${mixes.findIndex((gas) => sameGas(gas, switches[next]!.gas)) + 1}`;
    }
    lines.push('          <waypoint>');
    if (told(stopDepthM, i)) {
      const duration = told(stopTimeS, i) ? ` duration="${plainNumber(stopTimeS![i]!)}"` : '';
      lines.push(`            <decostop kind="mandatory" decodepth="${plainNumber(stopDepthM![i]!)}"${duration}/>`);
    }
    lines.push(
      `            <depth>${plainNumber(depthM[i]!)}</depth>`,
      `            <divetime>${plainNumber(timeS[i]!)}</divetime>`,
    );
    if (told(noStopS, i)) lines.push(`            <nodecotime>${plainNumber(noStopS![i]!)}</nodecotime>`);
    if (ref !== '') lines.push(`            <switchmix ref="${ref}"/>`);
    if (told(temperatureC, i))
      lines.push(`            <temperature>${plainNumber(tidy(temperatureC![i]! + ZERO_CELSIUS_K))}</temperature>`);
    lines.push('          </waypoint>');
  }
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (mark) => `&#${mark.charCodeAt(0)};`);
}

/** Two hyphens end a comment. */
function comment(text: string): string {
  return text.replace(/--+/g, '–');
}

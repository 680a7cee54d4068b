import { plainNumber } from '../../../quantity/number';
import { writeTime } from '../../../quantity/duration';
import { accepted, type Parsed } from '../../../quantity/parsed';
import { sameGas } from '../../../physics/gas';
import { carriedFromM, carriedTwice, readCarried, writeCarried } from './carried-text';
import { FIELDS } from './fields';
import { put, settingsOf, type Apply, type Setting } from './setting';
import * as values from './setting-values';
import { SETUP_SETTING } from './setup-setting';
import { SUPPLY_SETTINGS } from './supply-settings';
import { readTissues, writeTissues } from './tissues-text';

const [WATER, ...OTHERS] = settingsOf(FIELDS);

/**
 * Every setting of a script, in the order they are written and applied: a setting may depend on those above it. Those
 * between the fields say one thing together, or several things at once.
 */
export const SETTINGS: readonly Setting[] = [
  WATER!,
  {
    name: 'altitude',
    also: ['site altitude', 'elevation'],
    help: 'How high the surface of the water lies.',
    unless: '0 m',
    examples: ['0 m', '1500 m', '5000 ft', 'sea level'],
    always: true,
    read: (text) =>
      put(values.readSiteAltitude(text), (settings, altitudeM) => {
        settings.altitudeM = altitudeM;
        settings.start = { kind: 'adapted', altitudeM };
      }),
    write: ({ altitudeM }) => `${plainNumber(altitudeM)} m`,
  },
  {
    name: 'adapted to',
    also: ['adapted', 'acclimatised to', 'acclimatized to'],
    help: 'The altitude whose air has filled the diver’s tissues.',
    unless: 'The diver is adapted to the altitude of the site.',
    examples: ['1500 m', 'sea level'],
    topic: 'start',
    read: (text) =>
      put(
        values.readSiteAltitude(text),
        (settings, altitudeM) => void (settings.start = { kind: 'adapted', altitudeM }),
      ),
    write: ({ start, altitudeM }) =>
      start.kind === 'adapted' && start.altitudeM !== altitudeM ? `${plainNumber(start.altitudeM)} m` : undefined,
  },
  {
    name: 'arrived from',
    also: ['arrived', 'came from', 'coming from'],
    help: 'The altitude the diver came from, and how long before the dive.',
    unless: 'The diver is adapted to the altitude of the site.',
    examples: ['0 m, 2 h ago'],
    topic: 'start',
    read: (text) => put(values.readArrival(text), (settings, start) => void (settings.start = start)),
    write: ({ start }) =>
      start.kind === 'arrived' ? `${plainNumber(start.fromM)} m, ${writeTime(start.agoS)} ago` : undefined,
  },
  {
    name: 'tissues',
    also: ['tissue tensions', 'tensions'],
    help: 'The tensions left by an earlier dive, sixteen for each gas, the fastest compartment first.',
    unless: 'The diver is adapted to the altitude of the site.',
    examples: ['nitrogen 1.1 1.1 1.1 1.1 1 1 1 1 0.9 0.9 0.9 0.9 0.8 0.8 0.8 0.8 bar'],
    topic: 'start',
    read: (text) => put(readTissues(text), (settings, start) => void (settings.start = start)),
    write: ({ start }) => (start.kind === 'tensions' ? writeTissues(start) : undefined),
  },
  ...OTHERS,
  {
    name: 'carry',
    also: ['carried', 'carrying', 'carries'],
    help: 'Gases a schedule may switch to on the way up, each from its depth; with none given, from where its oxygen reaches 1.6 bar.',
    unless: 'No other gas.',
    examples: ['50% from 21 m, oxygen from 6 m', '50%'],
    repeats: true,
    read: readCarry,
    write: ({ carried }) => (carried.length === 0 ? undefined : writeCarried(carried)),
  },
  ...SUPPLY_SETTINGS,
  SETUP_SETTING,
];

function readCarry(text: string): Parsed<Apply> {
  const read = readCarried(text);
  if (!read.ok) return read;
  return accepted((settings) => {
    for (const { gas, fromM } of read.value) {
      if (settings.carried.some((other) => sameGas(other.gas, gas))) return carriedTwice(gas);
      settings.carried.push({ gas: { ...gas }, fromM: fromM ?? carriedFromM(gas, settings) });
    }
    return undefined;
  });
}

import { plainNumber } from '../../../quantity/number';
import { parseBreathingRate } from '../../../quantity/breathing-rate';
import { accepted, refused, type Parsed } from '../../../quantity/parsed';
import type { Settings } from '../../dive';
import { BREATHING_RANGE_L_MIN, MOST_CYLINDERS, STRESS_FACTOR_RANGE } from '../../bounds';
import type { Consumption, Supply } from '../../supply';
import { namedTwice, readCylinders, writeCylinders } from './cylinder-text';
import { put, type Apply, type Setting } from './setting';
import { readPlainNumber, within } from './setting-values';

/** The settings of what the diver carries to breathe and how fast they breathe it; they come after `gas`. */
export const SUPPLY_SETTINGS: readonly Setting[] = [
  {
    name: 'cylinder',
    also: ['cylinders', 'tank', 'tanks'],
    help: 'A cylinder: its name, water volume, pressure at the start and gas. The one breathed is the first that holds the gas in use. After “at” may come its working pressure; cubic feet need it.',
    unless: 'No cylinder is followed.',
    examples: [
      'back, 12 L, 200 bar, air',
      'back, 2 x 12 L at 232 bar, 210 bar, 18/45; stage, 80 cu ft at 3000 psi, 2800 psi, 50%',
    ],
    repeats: true,
    read: readCylinder,
    write: ({ supply }) => (supply && supply.cylinders.length > 0 ? writeCylinders(supply.cylinders) : undefined),
  },
  breathing('consumption', ['gas consumption', 'surface consumption'], 'bottomLMin', {
    help: 'The gas breathed in a minute at the surface; at depth it is more by the ambient pressure in bar.',
    unless: 'A diver is taken to breathe 20 L/min.',
    examples: ['20 L/min', '0.7 cu ft/min'],
  }),
  breathing('consumption going down', ['consumption on descent'], 'descentLMin', {
    help: 'The same while going down.',
  }),
  breathing('consumption going up', ['consumption on ascent'], 'ascentLMin', { help: 'The same while going up.' }),
  breathing('consumption at stops', ['consumption stops'], 'stopsLMin', {
    help: 'The same while staying anywhere, once the diver has come up from the deepest point.',
  }),
  {
    name: 'stress factor',
    also: ['stressed breathing'],
    help: 'How many times faster a frightened diver breathes; the reserve counts with it.',
    unless: 'The factor is taken as 2.',
    examples: ['2', '1.5'],
    read: (text) =>
      put(
        readPlainNumber(text, ...STRESS_FACTOR_RANGE),
        (settings, factor) => void (supplyOf(settings).stressFactor = factor),
      ),
    write: ({ supply }) => (supply?.stressFactor === undefined ? undefined : plainNumber(supply.stressFactor)),
  },
];

function breathing(
  name: string,
  also: string[],
  phase: keyof Consumption,
  words: Partial<Setting> & { readonly help: string },
): Setting {
  return {
    unless: 'As at the bottom.',
    examples: ['15 L/min'],
    ...words,
    name,
    also,
    read: (text) => put(readBreathing(text), (settings, rate) => void (supplyOf(settings).consumption[phase] = rate)),
    write: ({ supply }) => {
      const rate = supply?.consumption[phase];
      return rate === undefined ? undefined : `${plainNumber(rate)} L/min`;
    },
  };
}

function readBreathing(text: string): Parsed<number> {
  const read = parseBreathingRate(text);
  return read.ok ? within(read.value, text, ...BREATHING_RANGE_L_MIN, ' L/min') : read;
}

function readCylinder(text: string): Parsed<Apply> {
  const read = readCylinders(text);
  if (!read.ok) return read;
  return accepted((settings) => {
    const { cylinders } = supplyOf(settings);
    for (const cylinder of read.value) {
      if (cylinders.some(({ name }) => name === cylinder.name)) return namedTwice(cylinder.name);
      if (cylinders.length === MOST_CYLINDERS)
        return refused(`There are more than ${MOST_CYLINDERS} cylinders.`, 'Leave some out.');
      cylinders.push({ ...cylinder, gas: { ...(cylinder.gas ?? settings.gas) } });
    }
    return undefined;
  });
}

/** The supply of some settings, made when there is none yet. */
function supplyOf(settings: Settings): Supply {
  settings.supply ??= { cylinders: [], consumption: {} };
  return settings.supply;
}

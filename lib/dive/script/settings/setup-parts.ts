import { parseMeasure, type Measure } from '../../../quantity/amount';
import { LENGTH_UNITS } from '../../../quantity/length';
import { plainNumber, readNumber } from '../../../quantity/number';
import { accepted, quoted, refused, type Parsed } from '../../../quantity/parsed';
import { parsePercent, percentNumber, printFactors } from '../../../quantity/percent';
import { parseGas, writeGas } from '../../gas-text';
import { DEPTH_OFFSET_RANGE_M, DEPTH_SCALE_RANGE } from '../../bounds';
import type { Setup } from '../../setup';
import { readGradientFactors, readSiteAltitude, readWater, within } from './setting-values';

/** One thing a unit can be set to, or that can be wrong with it. */
export interface SetupPart {
  /** The words it begins with. */
  readonly words: string;
  readonly also: readonly string[];
  readonly example: string;
  read(text: string): Parsed<Partial<Setup>>;
  /** The whole part in words; nothing where the unit is as the dive is. */
  write(setup: Setup): string | undefined;
}

const OFFSET: Measure = {
  name: 'depth',
  unitSize: (word) => LENGTH_UNITS.get(word),
  units: 'm or ft, or a percentage',
  offer: (value) => `+${value} m, +${value} ft or ${value}%`,
};

/** In the order they are written. */
export const SETUP_PARTS: readonly SetupPart[] = [
  {
    words: 'gauge mode',
    also: ['gauge'],
    example: 'gauge mode',
    read: (text) =>
      text === ''
        ? accepted({ mode: 'gauge' })
        : refused(`${quoted(text)} after “gauge mode” says nothing.`, 'Write gauge mode alone.'),
    write: ({ mode }) => (mode === 'gauge' ? 'gauge mode' : undefined),
  },
  {
    words: 'gas',
    also: ['set to gas'],
    example: 'gas 32%',
    read: (text) => as(parseGas(text), (gas) => ({ gas: { ...gas } })),
    write: ({ gas }) => gas && `gas ${writeGas(gas)}`,
  },
  {
    words: 'altitude',
    also: ['elevation'],
    example: 'altitude 2000 m',
    read: (text) => as(readSiteAltitude(text), (altitudeM) => ({ altitudeM })),
    write: ({ altitudeM }) => (altitudeM === undefined ? undefined : `altitude ${plainNumber(altitudeM)} m`),
  },
  {
    words: 'water',
    also: [],
    example: 'water salt',
    read: (text) => as(readWater(text), (water) => ({ water })),
    write: ({ water }) => water && `water ${water}`,
  },
  {
    words: 'gradient factors',
    also: ['gradient factor', 'gf', 'gfs'],
    example: 'gradient factors 40/85',
    read: (text) => as(readGradientFactors(text), (gradientFactors) => ({ gradientFactors })),
    write: ({ gradientFactors: factors }) => factors && `gradient factors ${printFactors(factors)}`,
  },
  {
    words: 'depth',
    also: ['depth reads'],
    example: 'depth +0.8 m, depth 103%',
    read: readDepthFault,
    write({ depthOffsetM, depthScale }) {
      const offset = depthOffsetM === 0 ? [] : [`depth ${depthOffsetM > 0 ? '+' : ''}${plainNumber(depthOffsetM)} m`];
      const scale = depthScale === 1 ? [] : [`depth ${percentNumber(depthScale)}%`];
      return [...offset, ...scale].join(', ') || undefined;
    },
  },
  {
    words: 'fresh before dive',
    also: ['fresh before dives', 'fresh before'],
    example: 'fresh before dive 2',
    read: readFresh,
    write({ freshBeforeDives: dives }) {
      if (dives.length === 0) return undefined;
      return `fresh before dive${dives.length > 1 ? 's' : ''} ${dives.map((index) => index + 1).join(' and ')}`;
    },
  },
];

function as<T>(read: Parsed<T>, part: (value: T) => Partial<Setup>): Parsed<Partial<Setup>> {
  return read.ok ? accepted(part(read.value)) : read;
}

/** `+0.8 m` is added to every depth; `103%` is what is read of it. */
function readDepthFault(text: string): Parsed<Partial<Setup>> {
  if (/%|per ?cent/i.test(text)) {
    const read = parsePercent(text);
    if (!read.ok) return read;
    const [least, most] = DEPTH_SCALE_RANGE;
    if (read.value >= least && read.value <= most) return accepted({ depthScale: read.value });
    return refused(
      `${quoted(text)} is no sensor’s error.`,
      `Write ${percentNumber(least)}% to ${percentNumber(most)}%; 100% is right.`,
    );
  }
  const read = parseMeasure(text, OFFSET);
  if (!read.ok) return read;
  return as(within(read.value, text, ...DEPTH_OFFSET_RANGE_M, ' m'), (depthOffsetM) => ({ depthOffsetM }));
}

const LAST_DIVE = 51;

/** Numbers of dives, the first being 1, with "and" between them. */
function readFresh(text: string): Parsed<Partial<Setup>> {
  const dives: number[] = [];
  for (const word of text.split(/\s+and\s+/i)) {
    const read = readNumber(word);
    if (!read.ok) return refused(`${quoted(text)} is not the number of a dive.`, 'Write fresh before dive 2.');
    const { value } = read.value;
    if (!Number.isInteger(value) || value < 2 || value > LAST_DIVE) {
      return refused(
        `${quoted(word)} is not a dive with another before it.`,
        `Write a whole number from 2 to ${LAST_DIVE}.`,
      );
    }
    if (dives.includes(value - 1)) return refused(`Dive ${value} is named twice.`, 'Keep one of the two.');
    dives.push(value - 1);
  }
  return accepted({ freshBeforeDives: dives });
}

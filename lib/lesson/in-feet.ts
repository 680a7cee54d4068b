import { METRES_PER_FOOT } from '../quantity/length';
import type { Lesson } from './lesson';

/** A depth, a height or a rate as a lesson writes it, alone or within a text. */
const LENGTH = /(?<![\w.])(\d+(?:\.\d+)?) m(\/min)?\b(?!\/)/g;
/** A value in a text. */
const SLOT = /(\{\{[^{}]*\}\})/;
/** Fields whose text is read as it stands but for the values in it; all others are scripts, expressions or names. */
const PROSE = new Set(
  'title summary name text more because after opening otherwise needs objectives points notes tip ask'.split(' '),
);

/** From here on a figure is a height above the sea, m. */
const HEIGHT_M = 300;
/** The depth at which the water weighs as much as the air, as it is taught in either system. */
const ATMOSPHERE = { m: 10, ft: 33 };

/**
 * The same lesson as it is taught in feet: its dives, values and expressions have round figures of their own (100 ft for
 * 30 m, 60 ft/min for 18 m/min), everywhere the same ones. The lesson says under `inFeet` where another figure is meant,
 * or other words. It is another dive by as much, so that it has to be checked as a lesson of its own.
 */
export function lessonInFeet({ inFeet: own = {}, ...lesson }: Lesson): Lesson {
  const words = Object.entries(own).filter(([metric]) => !metric.match(LENGTH)?.includes(metric));
  const figures = (text: string) =>
    text.replace(LENGTH, (metric, figure: string, perMinute = '') =>
      Object.hasOwn(own, metric) ? own[metric]! : `${roundFeet(Number(figure), perMinute !== '')} ft${perMinute}`,
    );
  const prose = (text: string) =>
    // A piece in two is a value.
    text
      .split(SLOT)
      .map((piece, i) => (i % 2 === 1 ? figures(piece) : inWords(piece)))
      .join('');
  const worded = (text: string) => words.reduce((all, [metric, feet]) => all.replaceAll(metric, feet), text);
  const within = (value: unknown, key: string, told: boolean): unknown => {
    const inProse = told || PROSE.has(key);
    if (typeof value === 'string') return inProse ? prose(worded(value)) : figures(worded(value));
    if (Array.isArray(value)) return value.map((part) => within(part, key, inProse));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([name, part]) => [name, within(part, name, told || name === 'notes')]),
    );
  };
  return within(lesson, '', false) as Lesson;
}

const UNITS = 'one two three four five six seven eight nine ten eleven twelve fifteen eighteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty'.split(' ');
const WRITTEN_OUT = new RegExp(
  `\\b(?:(${TENS.join('|')})(?:-(${UNITS.slice(0, 9).join('|')}))?|(${UNITS.join('|')})) metres?\\b`,
  'gi',
);

/** What a text says of lengths outside its values: figures in titles, figures written out, and the unit's own name. */
function inWords(text: string): string {
  const figure = (name: string | undefined, names: readonly string[]) => names.indexOf((name ?? '').toLowerCase()) + 1;
  return text
    .replace(
      LENGTH,
      (_, metres: string, perMinute = '') => `${roundFeet(Number(metres), perMinute !== '')} ft${perMinute}`,
    )
    .replace(WRITTEN_OUT, (_, ten?: string, one?: string, alone?: string) => {
      const metres = ten
        ? (figure(ten, TENS) + 1) * 10 + figure(one, UNITS)
        : [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 18][figure(alone, UNITS) - 1]!;
      return `${roundFeet(metres, false)} ft`;
    })
    .replace(/\bmetres\b(?! and in feet)/g, 'feet')
    .replace(/\bmetre\b/g, 'foot');
}

/** The figure one would think of in feet, or feet a minute. */
function roundFeet(metres: number, rate: boolean): number {
  const feet = metres / METRES_PER_FOOT;
  if (metres === ATMOSPHERE.m && !rate) return ATMOSPHERE.ft;
  const to =
    metres >= HEIGHT_M ? 500 : rate ? (feet > 8 ? 5 : 1) : metres % 3 === 0 ? 10 : feet > 12 ? 5 : feet > 2 ? 1 : 0.1;
  return Number((Math.round(feet / to) * to).toFixed(1));
}

import { writeTime } from '../../quantity/duration';
import { LENGTH_UNITS, METRES_PER_FOOT } from '../../quantity/length';
import { atMost, NUMBER_START, plainText } from '../../quantity/number';
import { metresPerMinute } from '../../quantity/rate';
import { VERTICAL_WORDS, SURFACE } from './step-words';
import { capital } from '../../quantity/capital';

/** A new number in the words of an old value: its unit, its spacing and its decimal mark stay as they were. */
function likeBefore(
  old: string,
  unitSize: (unit: string) => number | undefined,
  decimals: (unitSize: number) => number,
  value: number,
): string | undefined {
  const plain = plainText(old);
  const number = NUMBER_START.exec(plain)?.[0];
  if (number === undefined) return undefined;
  const size = unitSize(plain.slice(number.length).trim());
  if (size === undefined) return undefined;
  const digits = decimals(size);
  // Never rounded down to nothing, which no step could mean.
  const text = atMost(Math.max(value / size, value > 0 ? 10 ** -digits : 0), digits);
  return (number.includes(',') ? text.replace('.', ',') : text) + old.slice(number.length);
}

/** A depth in the words of the one it replaces, to 0.1 m or 1 ft. `surface` becomes a number in the units asked for. */
export function depthLike(old: string, depthM: number, inFeet: boolean): string {
  const like = likeBefore(
    old,
    (unit) => LENGTH_UNITS.get(unit),
    (size) => (size === 1 ? 1 : 0),
    depthM,
  );
  if (like !== undefined) return like;
  if (depthM === 0) return 'surface';
  return inFeet ? `${atMost(depthM / METRES_PER_FOOT, 0)} ft` : `${atMost(depthM, 1)} m`;
}

/** Whether a depth is written in feet; one written as a word goes by the rest of its script. */
export function isInFeet(text: string, scriptInFeet: boolean): boolean {
  return NUMBER_START.test(plainText(text)) ? /f/i.test(text) : scriptInFeet;
}

/** A rate in the words of the one it replaces, to 0.1 m/min, 1 ft/min, 0.01 m/s or 0.1 ft/s. */
export function rateLike(old: string, rateMMin: number): string {
  const like = likeBefore(
    old,
    metresPerMinute,
    (size) => (size > 30 ? 2 : size > 10 ? 1 : size === 1 ? 1 : 0),
    rateMMin,
  );
  return like ?? `${atMost(rateMMin, 1)} m/min`;
}

const ONE_PART = /^[\d.,]+( *)([a-z]+)$/i;

/** A time in the words of the one it replaces, to the second: `3 min` becomes `4 min` or `3 min 20 s`. */
export function timeLike(old: string, timeS: number): string {
  const seconds = Math.max(1, Math.round(timeS));
  if (/^\d+:\d\d$/.test(old)) return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  const [, gap, unit] = ONE_PART.exec(old) ?? [];
  if (gap === undefined || unit === undefined) return writeTime(seconds);
  const size = { s: 1, m: 60, h: 3600 }[unit.charAt(0).toLowerCase()];
  if (size === undefined) return writeTime(seconds);
  if (seconds % size === 0) return `${seconds / size}${gap}${unit}`;
  if (size === 60 && seconds > size) return `${Math.floor(seconds / 60)}${gap}${unit} ${seconds % 60}${gap}s`;
  return writeTime(seconds);
}

/** The opposite of words that begin a change of depth, in the same manner and with the same capital. */
export function turned(verb: string): string {
  const plain = plainText(verb).replace(/[\s_-]+/g, ' ');
  const pair = VERTICAL_WORDS.find(([down, up]) => down === plain || up === plain);
  if (!pair) return verb;
  return likeCapital(verb, pair[0] === plain ? pair[1] : pair[0]);
}

/** The words that begin a step which only said `surface`, now that it goes somewhere else. */
export function ascendFor(verb: string): string {
  return likeCapital(verb, 'ascend to');
}

/** Whether the words of a step are the one verb that goes to the surface by itself. */
export function isSurfaceVerb(verb: string): boolean {
  return plainText(verb) === SURFACE;
}

/** Words with a capital where the old ones had one. */
export function likeCapital(old: string, words: string): string {
  return /^[A-Z]/.test(old) ? capital(words) : words;
}

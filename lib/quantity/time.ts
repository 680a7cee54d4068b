import { sizesByWord } from './amount';
import { plainText, readNumber, tidy } from './number';
import { accepted, quoted, refused, refusedFor, type Parsed } from './parsed';

const TIME_UNITS = sizesByWord([
  [1, 's, sec, secs, second, seconds'],
  [60, 'min, mins, minute, minutes'],
  [3600, 'h, hr, hrs, hour, hours'],
  [86400, 'd, day, days'],
]);

/** Seconds in a unit of time by its word. */
export function secondsPerUnit(word: string): number | undefined {
  return TIME_UNITS.get(word);
}

const CLOCK = /^(?:(\d+):)?(\d+):(\d+)$/;
const PART = / *(?:, |and )? *([-+]?(?:\d+(?:[.,]\d+)*|[.,]\d+)) *([a-z]*)/y;

/**
 * Reads a length of time; s, never negative. `20 min`, `2 min 50 s`, `1.5 h`, `2 days`, and the clock forms `2:50`
 * (minutes and seconds) and `1:02:50` (hours, minutes and seconds).
 */
export function parseTime(text: string): Parsed<number> {
  const lead = text.length - text.trimStart().length;
  const plain = plainText(text).trim().replace(/\t/g, ' ');
  if (plain === '') return refused('No time is written here.', 'Write a time such as 20 min or 2 min 50 s.');
  const clock = CLOCK.exec(plain);
  return clock ? clockTime(clock) : partsTime(plain, lead);
}

/** Whether a text is a time in clock form, which people use for min:s and for h:min alike. */
export function isClockTime(text: string): boolean {
  return CLOCK.test(text.trim());
}

function clockTime(clock: RegExpExecArray): Parsed<number> {
  const [typed, hours, minutes = '', seconds = ''] = clock;
  if (seconds.length !== 2 || (hours !== undefined && minutes.length !== 2)) {
    const padded = (hours === undefined ? [minutes] : [hours, minutes.padStart(2, '0')]).concat(
      seconds.padStart(2, '0'),
    );
    return refusedFor(
      `${quoted(typed)} is not a time of the clock.`,
      `Write two digits after each colon, such as ${padded.join(':')}.`,
      [padded.join(':')],
    );
  }
  if (Number(seconds) > 59 || (hours !== undefined && Number(minutes) > 59)) {
    return refused(
      `${quoted(typed)} has more than 59 after the colon.`,
      'Carry the sixties over, or write it out, such as 3 min 15 s.',
    );
  }
  const total = Number(hours ?? 0) * 3600 + Number(minutes) * 60 + Number(seconds);
  return Number.isFinite(total) ? accepted(total) : refused(`${quoted(typed)} is too long.`, 'Write a shorter time.');
}

function partsTime(plain: string, lead: number): Parsed<number> {
  let total = 0;
  let smallest = Infinity;
  for (let at = 0; at < plain.length;) {
    PART.lastIndex = at;
    const part = PART.exec(plain);
    if (!part) return notTime(plain, at, lead);
    const [whole, number = '', unit = ''] = part;
    const where = [lead + at + whole.length - whole.trimStart().length, lead + at + whole.trimEnd().length] as const;
    const read = readNumber(number, unit);
    if (!read.ok) return { ...read, at: where };
    const { value } = read.value;
    const size = secondsPerUnit(unit);
    if (size === undefined) return notUnit(number, unit, where);
    if (number.startsWith('-')) return refused('A time is never negative.', `Write ${plain.replace(/-/g, '')}.`, where);
    if (size >= smallest)
      return refused(
        `${quoted(plain)} gives its parts out of order.`,
        'Write the larger unit first, each once: 2 min 50 s.',
      );
    total += size === 1 ? value : tidy(value * size);
    if (smallest !== Infinity) total = tidy(total);
    smallest = size;
    at += whole.length;
  }
  return Number.isFinite(total) ? accepted(total) : refused(`${quoted(plain)} is too long.`, 'Write a shorter time.');
}

function notTime(plain: string, at: number, lead: number): Parsed<number> {
  const rest = plain.slice(at);
  const from = lead + at + rest.length - rest.trimStart().length;
  return refused(`${quoted(rest)} is not part of a time.`, 'Write a time such as 20 min, 2 min 50 s or 2:50.', [
    from,
    lead + plain.length,
  ]);
}

function notUnit(number: string, unit: string, where: readonly [number, number]): Parsed<number> {
  if (unit === '')
    return refusedFor(
      `${number} what?`,
      `Write ${number} min or ${number} s.`,
      [`${number} min`, `${number} s`],
      where,
    );
  if (unit === 'm')
    return refusedFor(
      `${quoted(`${number} m`)} is a length, not a time.`,
      `Write ${number} min.`,
      [`${number} min`],
      where,
    );
  return refused(`${quoted(unit)} is not a unit of time.`, 'Write s, min, h or days.', where);
}

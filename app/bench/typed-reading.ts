import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { parseDepth } from '@/lib/quantity/depth';
import { parseRate } from '@/lib/quantity/rate';
import { atMost, plainText, readNumber, tidy } from '@/lib/quantity/number';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import type { UnitSystem } from '@/lib/quantity/unit-system';

const isBare = (text: string) => /^[-+]?[\d.,]+$/.test(plainText(text).trim());

/** A depth as read off a unit: a bare number is in the units the screen is in. Nothing typed is undefined. */
export function parseDepthRead(text: string, system: UnitSystem): Parsed<number | undefined> {
  if (text.trim() === '') return accepted(undefined);
  if (!isBare(text)) return parseDepth(text);
  const read = readNumber(text);
  if (!read.ok) return read;
  return accepted(system === 'metric' ? read.value.value : tidy(read.value.value * METRES_PER_FOOT));
}

/** A depth on a display: none is negative, and none deeper than any unit shows. */
export function parseDepthShown(text: string, system: UnitSystem): Parsed<number | undefined> {
  const read = parseDepthRead(text, system);
  if (!read.ok || read.value === undefined || (read.value >= 0 && read.value <= DEEPEST_SHOWN_M)) return read;
  return refused(
    `No display shows a depth of ${text.trim()}.`,
    'Write the figure as it is shown; where there is none, tick “shows no depth” or choose what was seen.',
  );
}

const DEEPEST_SHOWN_M = 400;

export function depthReadText(depthM: number, system: UnitSystem): string {
  return system === 'metric'
    ? atMost(depthM, 2).replace('−', '-')
    : atMost(depthM / METRES_PER_FOOT, 1).replace('−', '-');
}

/** Whole minutes, or `>99`. */
export function parseNoStopRead(text: string): Parsed<number | 'over' | undefined> {
  const plain = plainText(text).trim();
  if (plain === '') return accepted(undefined);
  if (/^(>|over|more than)\s*99$|^over$/.test(plain)) return accepted('over');
  const read = readNumber(plain.replace(/\s*min(utes)?$/, ''));
  if (!read.ok) return refused(read.what, 'Write minutes such as 12, or >99.');
  if (read.value.value < 0 || read.value.value > 999)
    return refused('No unit shows such a no-stop time.', 'Write minutes such as 12, or >99.');
  return accepted(read.value.value);
}

export function parseHoursRead(text: string): Parsed<number | undefined> {
  const plain = plainText(text).trim();
  if (plain === '') return accepted(undefined);
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(plain);
  if (clock) return accepted(Number(clock[1]) + Number(clock[2]) / 60);
  const read = readNumber(plain.replace(/\s*h(ours?)?$/, ''));
  if (!read.ok || read.value.value < 0 || read.value.value > 200)
    return refused('This is not a number of hours.', 'Write hours such as 12 or 11:40.');
  return accepted(read.value.value);
}

/** A length someone states, such as an allowance; nothing typed is nothing stated. */
export function parseStatedLength(text: string, system: UnitSystem): Parsed<number | null> {
  const read = parseDepthRead(text, system);
  if (!read.ok) return read;
  return stated(read.value);
}

export function parseStatedPercent(text: string): Parsed<number | null> {
  if (text.trim() === '') return accepted(null);
  const read = readNumber(text.replace('%', ''));
  return read.ok ? stated(read.value.value) : read;
}

export function parseStatedRate(text: string, system: UnitSystem): Parsed<number | null> {
  if (text.trim() === '') return accepted(null);
  const read = isBare(text) ? parseRate(`${text} ${system === 'metric' ? 'm/min' : 'ft/min'}`) : parseRate(text);
  return read.ok ? stated(read.value) : read;
}

function stated(value: number | undefined): Parsed<number | null> {
  if (value === undefined) return accepted(null);
  return value > 0 && value <= 1000
    ? accepted(value)
    : refused('What is allowed is more than nothing.', 'Write a number above 0, or leave the box empty.');
}

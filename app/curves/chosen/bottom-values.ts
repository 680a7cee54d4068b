import { LONGEST_S } from '@/lib/dive/bounds';
import { parseWorkingDepth } from '@/lib/dive/working-depth';
import { parseMinutes } from '@/lib/quantity/minutes-list';
import { quoted, refused, type Parsed } from '@/lib/quantity/parsed';
import { parseTime } from '@/lib/quantity/time';
import { MOST_CURVES } from '../plot/curve-looks';

/** Readers for the time at depth that a curve begins with. */

export function parseBottomDepth(text: string): Parsed<number> {
  const read = parseWorkingDepth(text);
  return read.ok && read.value === 0
    ? refused('The surface is no depth to come up from.', 'Write a depth such as 30 m or 100 ft.')
    : read;
}

/** A time at depth; s. */
export function parseBottomTime(text: string): Parsed<number> {
  const read = parseTime(text);
  return read.ok && read.value > LONGEST_S
    ? refused(`${quoted(text)} is longer than the week this model follows.`, 'Write at most 7 days.')
    : read;
}

/** Times at depth to lay over each other, min. */
export function parseBottomTimes(text: string): Parsed<readonly number[]> {
  const read = parseMinutes(text);
  return read.ok && read.value.length > MOST_CURVES
    ? refused(`There are ${read.value.length} times.`, `Write at most ${MOST_CURVES}, so that they can be told apart.`)
    : read;
}

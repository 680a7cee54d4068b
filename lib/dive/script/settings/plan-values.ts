import { parseDepth } from '../../../quantity/depth';
import { plainNumber } from '../../../quantity/number';
import { accepted, quoted, refused, type Parsed } from '../../../quantity/parsed';
import { parseRate } from '../../../quantity/rate';
import { parseTime } from '../../../quantity/time';
import { USUAL_DESCENT_M_MIN } from '../../bounds';
import { within } from './setting-values';

/** Readers of the settings of the ascent plan. */

export function readPlanRate(text: string): Parsed<number> {
  const read = parseRate(text);
  return read.ok && read.value > 60
    ? refused(`${quoted(text)} is too fast for a plan.`, 'Write at most 60 m/min.')
    : read;
}

/** The same for descents, m/min; nothing where it is the usual one, which is not kept. */
export function readDescentRate(text: string): Parsed<number | undefined> {
  const read = readPlanRate(text);
  return read.ok && read.value === USUAL_DESCENT_M_MIN ? accepted(undefined) : read;
}

/** A depth or spacing of stops, m. */
export function readStopDepth(text: string): Parsed<number> {
  const read = parseDepth(text);
  return read.ok ? within(read.value, text, 1, 10, ' m') : read;
}

/** What stop times are whole multiples of, min. */
export function readRounding(text: string): Parsed<number> {
  const read = parseTime(text);
  if (!read.ok) return read;
  if (read.value === 0) return refused('Stops cannot be rounded to nothing.', 'Write a time such as 1 min or 1 s.');
  if (read.value > 300) return refused(`${quoted(text)} is too coarse.`, 'Write at most 5 min.');
  return accepted(read.value / 60);
}

/** The same in words; in seconds where minutes would not read back exactly. */
export function writeRounding(minutes: number): string {
  const inMinutes = `${plainNumber(minutes)} min`;
  const read = readRounding(inMinutes);
  return read.ok && read.value === minutes ? inMinutes : `${plainNumber(minutes * 60)} s`;
}

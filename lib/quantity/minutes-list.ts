import { atMost, readNumber } from './number';
import { accepted, quoted, refused, type Parsed } from './parsed';

const MOST_TIMES = 12;
const LONGEST_MIN = 300;

/** Reads `10, 20, 30 min`: bottom times in minutes, sorted, each once. */
export function parseMinutes(text: string): Parsed<readonly number[]> {
  const minutes: number[] = [];
  for (const part of partsOfList(text)) {
    const read = readNumber(part.replace(/\s*min(?:utes?)?$/i, ''));
    if (!read.ok) return read;
    if (!(read.value.value > 0) || read.value.value > LONGEST_MIN)
      return refused(`${quoted(part)} is no bottom time for a table.`, `Write minutes up to ${LONGEST_MIN}.`);
    minutes.push(read.value.value);
  }
  return listed(minutes, MOST_TIMES, 'times', 'Write minutes such as 10, 20, 30 min.');
}

/** Minutes as `parseMinutes` reads them. */
export function printMinutesList(minutes: readonly number[]): string {
  return `${minutes.map((one) => atMost(one, 1)).join(', ')} min`;
}

/** The entries of a written list. A comma between digits is a decimal comma, not the end of an entry. */
export function partsOfList(text: string): string[] {
  return text
    .split(/(?<!\d),|,(?!\d)|;/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

/** The values of a list sorted, each once; refused where there are none or more than `most`. */
export function listed(values: readonly number[], most: number, name: string, mend: string): Parsed<readonly number[]> {
  const sorted = [...new Set(values)].sort((one, other) => one - other);
  if (sorted.length === 0) return refused('Nothing is written here.', mend);
  if (sorted.length > most)
    return refused(`There are ${sorted.length} ${name}.`, `Write at most ${most}, so that the table stays on a sheet.`);
  return accepted(sorted);
}

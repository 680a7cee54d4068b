import { DEEPEST_M } from '@/lib/dive/bounds';
import { parseDepth } from '@/lib/quantity/depth';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { atMost, readNumber } from '@/lib/quantity/number';
import { accepted, quoted, refused, type Parsed } from '@/lib/quantity/parsed';
import type { UnitSystem } from '@/lib/quantity/unit-system';

const MOST_ROWS = 16;
const MOST_COLUMNS = 12;
const LONGEST_MIN = 300;

/** Depths of a table usually asked for, m: round figures in each system. */
export const USUAL_DEPTHS_M: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [12, 15, 18, 21, 24, 27, 30, 33, 36, 39, 42],
  imperial: [40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140].map((feet) => feet * METRES_PER_FOOT),
};

export const USUAL_TIMES_MIN: readonly number[] = [5, 10, 15, 20, 25, 30, 40, 50, 60, 80];

/** Reads `12, 15, 18 m`: depths with one unit at the end, or one each; sorted, each once. */
export function parseDepths(text: string): Parsed<readonly number[]> {
  const parts = partsOf(text);
  const unit = /[a-z]+\s*$/i.exec(text)?.[0].trim() ?? '';
  const depths: number[] = [];
  for (const part of parts) {
    const read = parseDepth(/[a-z]/i.test(part) ? part : `${part} ${unit}`);
    if (!read.ok) return read;
    if (read.value === 0 || read.value > DEEPEST_M)
      return refused(`${quoted(part)} is no depth for a table.`, `Write depths up to ${DEEPEST_M} m.`);
    depths.push(read.value);
  }
  return listed(depths, MOST_ROWS, 'depths', 'Write depths such as 12, 15, 18 m.');
}

/** Reads `10, 20, 30 min`: minutes, sorted, each once. */
export function parseMinutes(text: string): Parsed<readonly number[]> {
  const minutes: number[] = [];
  for (const part of partsOf(text)) {
    const read = readNumber(part.replace(/\s*min(?:utes?)?$/i, ''));
    if (!read.ok) return read;
    if (!(read.value.value > 0) || read.value.value > LONGEST_MIN)
      return refused(`${quoted(part)} is no bottom time for a table.`, `Write minutes up to ${LONGEST_MIN}.`);
    minutes.push(read.value.value);
  }
  return listed(minutes, MOST_COLUMNS, 'times', 'Write minutes such as 10, 20, 30 min.');
}

export function printDepths(depthsM: readonly number[], units: UnitSystem): string {
  return units === 'metric'
    ? `${depthsM.map((depth) => atMost(depth, 1)).join(', ')} m`
    : `${depthsM.map((depth) => atMost(depth / METRES_PER_FOOT, 0)).join(', ')} ft`;
}

export function printMinutesList(minutes: readonly number[]): string {
  return `${minutes.map((one) => atMost(one, 1)).join(', ')} min`;
}

function partsOf(text: string): string[] {
  // A comma between digits is a decimal comma, not the end of an entry.
  return text
    .split(/(?<!\d),|,(?!\d)|;/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

function listed(values: readonly number[], most: number, name: string, mend: string): Parsed<readonly number[]> {
  const sorted = [...new Set(values)].sort((one, other) => one - other);
  if (sorted.length === 0) return refused('Nothing is written here.', mend);
  if (sorted.length > most)
    return refused(`There are ${sorted.length} ${name}.`, `Write at most ${most}, so that the table stays on a sheet.`);
  return accepted(sorted);
}

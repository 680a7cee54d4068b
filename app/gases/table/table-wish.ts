import { DEEPEST_M } from '@/lib/dive/bounds';
import { parseDepth } from '@/lib/quantity/depth';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { listed, partsOfList } from '@/lib/quantity/minutes-list';
import { atMost } from '@/lib/quantity/number';
import { quoted, refused, type Parsed } from '@/lib/quantity/parsed';
import type { UnitSystem } from '@/lib/quantity/unit-system';

const MOST_ROWS = 16;

/** Depths of a table usually asked for, m: round figures in each system. */
export const USUAL_DEPTHS_M: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [12, 15, 18, 21, 24, 27, 30, 33, 36, 39, 42],
  imperial: [40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140].map((feet) => feet * METRES_PER_FOOT),
};

export const USUAL_TIMES_MIN: readonly number[] = [5, 10, 15, 20, 25, 30, 40, 50, 60, 80];

/** Reads `12, 15, 18 m`: depths with one unit at the end, or one each; sorted, each once. */
export function parseDepths(text: string): Parsed<readonly number[]> {
  const parts = partsOfList(text);
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

export function printDepths(depthsM: readonly number[], units: UnitSystem): string {
  return units === 'metric'
    ? `${depthsM.map((depth) => atMost(depth, 1)).join(', ')} m`
    : `${depthsM.map((depth) => atMost(depth / METRES_PER_FOOT, 0)).join(', ')} ft`;
}

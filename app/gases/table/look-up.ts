import type { TeachingEntry, TeachingRow } from '@/lib/exposure/teaching-table';

/** Where a dive lands in a table, or why it lands nowhere. */
export type LookedUp =
  | {
      readonly found: true;
      readonly row: TeachingRow;
      readonly bottomMin: number;
      readonly entry: TeachingEntry | undefined;
      readonly withinNoStop: boolean;
    }
  | { readonly found: false; readonly beyond: 'depth' | 'time' };

/**
 * Reads a table as divers are taught to: the greatest depth in the next deeper row, the bottom time in the next longer
 * column, never between two. A dive within the row's no-stop time needs no column.
 */
export function lookUp(
  rows: readonly TeachingRow[],
  bottomMins: readonly number[],
  depthM: number,
  bottomMin: number,
): LookedUp {
  const row = rows.find((one) => one.depthM >= depthM - 1e-9);
  if (!row) return { found: false, beyond: 'depth' };
  const column = bottomMins.find((minutes) => minutes >= bottomMin - 1e-9);
  const withinNoStop = row.noStopMin === null || bottomMin <= row.noStopMin;
  if (withinNoStop) return { found: true, row, bottomMin: column ?? bottomMin, entry: undefined, withinNoStop };
  const entry = row.entries.find((one) => one.bottomMin === column);
  return column === undefined || !entry
    ? { found: false, beyond: 'time' }
    : { found: true, row, bottomMin: column, entry, withinNoStop };
}

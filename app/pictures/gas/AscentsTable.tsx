'use client';

import type { ReactNode } from 'react';
import type { Stop } from '@/lib/ascent/plan/schedule';
import { printStopDepth } from '@/lib/quantity/depth';
import { DataTable } from '../../parts/DataTable';
import { usePreferences } from '../../parts/preferences';

export interface AscentColumn {
  readonly title: string;
  readonly stops: readonly Stop[];
}

interface AscentsTableProps {
  caption: string;
  columns: readonly AscentColumn[];
  /** What a stop says in its cell. */
  sayStop: (stop: Stop) => string;
  /** Rows under the stops, a cell for each column. */
  sums: readonly { readonly label: string; readonly cells: readonly ReactNode[] }[];
}

/** Ascents beside each other, a row for each depth at which any of them stops. */
export function AscentsTable({ caption, columns, sayStop, sums }: AscentsTableProps) {
  const units = usePreferences((state) => state.units);
  const depths = [...new Set(columns.flatMap(({ stops }) => stops.map(({ depthM }) => depthM)))].sort(
    (one, other) => other - one,
  );
  const stopsAt = (depthM: number, { stops }: AscentColumn) =>
    stops
      .filter((stop) => stop.depthM === depthM)
      .map(sayStop)
      .join(', ') || '–';
  const rows = [
    ...depths.map((depthM) => ({
      label: printStopDepth(depthM, units),
      cells: columns.map((column) => stopsAt(depthM, column)) as readonly ReactNode[],
    })),
    ...sums,
  ];
  return (
    <DataTable
      caption={caption}
      captionShown
      rows={rows}
      columns={[
        { heading: 'Stop at', cell: (row: (typeof rows)[number]) => row.label },
        ...columns.map(({ title }, index) => ({
          heading: title,
          cell: (row: (typeof rows)[number]) => row.cells[index],
        })),
      ]}
    />
  );
}

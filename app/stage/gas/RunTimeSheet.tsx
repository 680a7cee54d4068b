'use client';

import { plannedDive, type AscentPlan } from '@/lib/exposure/ascent-plan';
import { runTimeTable, type RunTimeRow } from '@/lib/exposure/run-time-table';
import { gasName } from '@/lib/physics/gas';
import { sayDepth } from '@/lib/quantity/depth';
import { printFactors } from '@/lib/quantity/percent';
import { printRate } from '@/lib/quantity/rate';
import { printAs } from '@/lib/sayings/measures';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { DataTable, type TableColumn } from '../../parts/DataTable';
import { usePreferences } from '../../parts/preferences';

export function runTimeColumns(units: UnitSystem): TableColumn<RunTimeRow>[] {
  const depth = (row: RunTimeRow, depthM: number) =>
    row.action === 'stop' ? printAs('stopM', depthM, units) : sayDepth(depthM, units);
  return [
    { heading: 'What', cell: (row) => row.action },
    {
      heading: 'Depth',
      cell: (row) =>
        row.fromM === row.toM ? depth(row, row.toM) : `${sayDepth(row.fromM, units)} to ${sayDepth(row.toM, units)}`,
    },
    { heading: 'For', numeric: true, cell: ({ minutes }) => printAs('plannedS', minutes * 60, units) },
    { heading: 'Until run time', numeric: true, cell: ({ endMin }) => printAs('plannedS', endMin * 60, units) },
    { heading: 'Gas', cell: ({ gas, switched }) => (switched ? `switch to ${gasName(gas)}` : gasName(gas)) },
  ];
}

export function runTimeRows(plan: AscentPlan, diveNumber: number): RunTimeRow[] {
  return runTimeTable(plannedDive(plan), diveNumber);
}

/** The run-time table as it is printed, with what it was worked out under. */
export function RunTimeSheet({ plan, diveNumber }: { plan: AscentPlan; diveNumber: number }) {
  const units = usePreferences((state) => state.units);
  const { gradientFactors, plan: wish, water } = plan.bottom.settings;
  return (
    <>
      <p>
        Gradient factors {printFactors(gradientFactors)}, {water} water, ascent at {printRate(wish.ascentMMin, units)},
        last stop at {printAs('stopM', wish.lastStopM, units)}. Minutes and seconds.
      </p>
      <DataTable caption="Run-time table" columns={runTimeColumns(units)} rows={runTimeRows(plan, diveNumber)} />
    </>
  );
}

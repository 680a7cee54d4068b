import { useMemo } from 'react';
import { parseRun, type RunRead } from '@/lib/bench/chamber-run';
import { expectedOf } from '@/lib/bench/expected';
import { tookOf } from '@/lib/bench/live-run';
import type { UnitSheet } from '@/lib/bench/write-sheet-csv';
import { useBench } from './bench-context';

/** The run read last: several parts of the screen ask for the same one. */
let last: { readonly script: string; readonly read: RunRead } | undefined;

function runOf(script: string): RunRead {
  if (last?.script !== script) last = { script, read: parseRun(script) };
  return last.read;
}

export function useRun(): RunRead {
  const script = useBench((state) => state.script);
  return runOf(script);
}

/** Every unit with what it should show; by the times a live run has really taken. Empty while the run cannot be read. */
export function useSheets(read: RunRead): readonly UnitSheet[] {
  const settings = useBench((state) => state.settings);
  const units = useBench((state) => state.units);
  const readings = useBench((state) => state.readings);
  const marks = useBench((state) => state.marks);
  const expected = useMemo(() => {
    if (!read.ok) return undefined;
    const took = marks.length > 1 ? tookOf(read.run, marks) : [];
    return units.map((unit) => expectedOf(read.run, settings, unit, took));
  }, [read, settings, units, marks]);
  return useMemo(
    () =>
      expected
        ? units.map((unit, index) => ({ unit, expected: expected[index]!, readings: readings[unit.id] ?? {} }))
        : [],
    [expected, units, readings],
  );
}

import type { Timeline } from '../../dive/timeline';
import { compartmentName } from './compartment-steps';
import type { Unit, WorkingTable } from '../working';
import { ALL_COMPARTMENTS } from '../../tissue/coefficients';

interface Column {
  readonly title: string;
  readonly unit: Unit;
  /** The figure of a compartment, counted from 0. */
  readonly of: (compartment: number) => number;
}

/** A table of all sixteen compartments, each by its name and half-time and the figures that decide. */
export function sixteenTable(
  timeline: Timeline,
  caption: string,
  columns: readonly Column[],
  marked: number,
): WorkingTable {
  const { nitrogenHalfTimeMin, heliumHalfTimeMin } = timeline.compartments;
  const halfTimes: readonly Column[] = timeline.hasHelium
    ? [
        { title: 'half-time, nitrogen', unit: 'min', of: (c) => nitrogenHalfTimeMin[c]! },
        { title: 'half-time, helium', unit: 'min', of: (c) => heliumHalfTimeMin[c]! },
      ]
    : [{ title: 'half-time', unit: 'min', of: (c) => nitrogenHalfTimeMin[c]! }];
  const all = [...halfTimes, ...columns];
  return {
    caption,
    columns: [{ title: 'compartment', unit: '' }, ...all.map(({ title, unit }) => ({ title, unit }))],
    rows: ALL_COMPARTMENTS.map((c) => [compartmentName(timeline, c), ...all.map(({ of }) => of(c))]),
    marked,
  };
}

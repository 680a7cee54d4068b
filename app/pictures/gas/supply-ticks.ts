import { ticks } from 'd3';
import { BAR_PER_PSI } from '@/lib/quantity/pressure';
import type { UnitSystem } from '@/lib/quantity/unit-system';

/** Cylinder pressures to mark up to a highest one, bar, at round figures of the reader's own unit. */
export function cylinderTicks(mostBar: number, units: UnitSystem): number[] {
  const unitBar = units === 'metric' ? 1 : BAR_PER_PSI;
  return ticks(0, mostBar / unitBar, 5).map((mark) => mark * unitBar);
}

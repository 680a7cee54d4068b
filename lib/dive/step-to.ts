import type { Step } from './dive';

/** One step from a depth to another, m, in so many seconds. */
export function stepTo(fromM: number, toM: number, durationS: number): Step {
  if (toM === fromM) return { kind: 'stay', durationS };
  return { kind: toM > fromM ? 'descend' : 'ascend', toM, durationS };
}

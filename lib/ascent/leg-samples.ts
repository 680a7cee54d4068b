import type { Timeline } from '../dive/timeline';

/** The samples of one leg, from `first` to before `end`; `steady` where the depth, and so the breathed pressure, stands still. */
export interface LegSamples {
  readonly legIndex: number;
  readonly first: number;
  readonly end: number;
  readonly steady: boolean;
}

/** A timeline's samples, leg by leg. */
export function legSamples({ leg, legs, length }: Timeline): LegSamples[] {
  const runs: LegSamples[] = [];
  let first = 0;
  for (let i = 1; i <= length; i += 1) {
    if (i < length && leg[i] === leg[first]) continue;
    const legIndex = leg[first]!;
    runs.push({ legIndex, first, end: i, steady: legs[legIndex]!.fromM === legs[legIndex]!.toM });
    first = i;
  }
  return runs;
}

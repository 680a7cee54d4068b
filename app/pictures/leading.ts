import { loadAt } from '@/lib/ascent/figures';
import { supersaturation } from '@/lib/ascent/supersaturation';
import type { Scene } from './scene';

/** The compartment (1–16) to look at: the one that sets the ceiling, else the no-stop time, else leads on surfacing. */
export function leadingCompartment({ timeline, figures }: Scene, sample: number): number {
  return (
    figures.ceilingLeader[sample]! ||
    figures.noStopLeader[sample]! ||
    supersaturation(loadAt(timeline, sample), timeline.surfaceBar).leader
  );
}

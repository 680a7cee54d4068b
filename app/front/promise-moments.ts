import { sampleAt } from '@/lib/dive/timeline';
import type { Scene } from '../pictures/scene';

/** A moment of the dive that is worth a chase of its own. */
export interface PromiseMoment {
  readonly timeS: number;
  readonly words: string;
}

/** Gas on its way in, the first compartment at its limit, and the stop that is owed once the diver has come up to it. */
export function promiseMoments({ timeline, figures }: Scene, stopS: number): readonly PromiseMoment[] {
  const limitS = timeline.timeS[figures.ceilingM.findIndex((ceilingM) => ceilingM > 0)]!;
  return [
    { timeS: timeline.timeS[sampleAt(timeline, limitS / 2)]!, words: 'on the way' },
    { timeS: limitS, words: 'one at its limit' },
    { timeS: stopS, words: 'a stop is owed' },
  ];
}

/** The chase that shows a moment someone looks at: the one whose own moment is nearest. */
export function chaseOf(moments: readonly PromiseMoment[], timeS: number): number {
  const away = moments.map((moment) => Math.abs(moment.timeS - timeS));
  return away.indexOf(Math.min(...away));
}

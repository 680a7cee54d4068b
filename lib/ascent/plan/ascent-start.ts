import { gasAt, type Timeline } from '../../dive/timeline';
import { COMPARTMENTS } from '../../tissue/coefficients';
import type { Figures } from '../figures';
import { ascentPlanner, type AscentStart, type Schedule } from './schedule';

/** Where an ascent begun at one sample of a timeline is planned from; no tension is copied. */
export function ascentStartAt(timeline: Timeline, { anchorM }: Pick<Figures, 'anchorM'>, sample: number): AscentStart {
  return {
    depthM: timeline.depthM[sample]!,
    gas: gasAt(timeline, sample),
    nitrogenBar: timeline.nitrogenBar,
    heliumBar: timeline.heliumBar,
    at: sample * COMPARTMENTS,
    anchorM: anchorM[sample]!,
    stayedMin: stayedMin(timeline, sample),
  };
}

/** The ascent begun at one sample of a timeline, by the plan it is seen under. */
export function plannedAt(timeline: Timeline, figures: Pick<Figures, 'limits' | 'anchorM'>, sample: number): Schedule {
  return ascentPlanner(figures.limits, timeline)(ascentStartAt(timeline, figures, sample));
}

/** How long the diver has been at the depth of a sample on the gas breathed there, however many steps tell it, min. */
function stayedMin({ legs, leg, timeS, freshAtLegs }: Timeline, sample: number): number {
  const index = leg[sample]!;
  const { toM, gas } = legs[index]!;
  const stays = (at: number) => {
    const one = legs[at]!;
    return one.fromM === toM && one.toM === toM && one.gas === gas;
  };
  if (!stays(index)) return 0;
  let first = index;
  while (first > 0 && stays(first - 1) && !freshAtLegs.includes(first)) first -= 1;
  return (timeS[sample]! - legs[first]!.startS) / 60;
}

import type { AscentSite } from '../ascent/plan/schedule';
import type { Dive, Settings } from '../dive/dive';
import { startingTissues } from '../dive/start';
import { computeTimeline, tissuesAt } from '../dive/timeline';
import { atmosphereBar } from '../physics/atmosphere';
import { barPerMetre } from '../physics/water';
import { lungOffsetBar } from '../tissue/alveolar';
import { compartments } from '../tissue/coefficients';
import type { Tissues } from '../tissue/tissues';

/** What a dive's settings fix for every curve: the model's compartments, the pressures of the place and the lungs. */
export function curveSite({ model, altitudeM, water }: Settings): AscentSite {
  return {
    compartments: compartments(model.variant, model.first),
    surfaceBar: atmosphereBar(altitudeM),
    barPerMetre: barPerMetre(water),
    lungOffsetBar: lungOffsetBar(model.respiratoryQuotient),
  };
}

/** The tissues the settings begin with: rested at an altitude, newly arrived, or as carried over. */
export function rested(settings: Settings): Tissues {
  return startingTissues(settings, curveSite(settings).compartments);
}

/** The tissues some minutes at the surface, breathing air, after the end of a dive. */
export function leftBy(dive: Dive, surfaceMin: number): Tissues {
  const steps =
    surfaceMin > 0 ? [...dive.steps, { kind: 'interval' as const, durationS: surfaceMin * 60 }] : dive.steps;
  const wholeLegs = 1 + steps.reduce((sum, step) => sum + (step.kind === 'switch' ? 0 : step.durationS), 0);
  const timeline = computeTimeline({ ...dive, steps }, wholeLegs);
  return tissuesAt(timeline, timeline.length - 1);
}

/** Depths from one to another in equal steps, both ends included where the steps fit, m. */
export function depthLadder(fromM: number, toM: number, stepM: number): Float64Array {
  if (!(stepM > 0) || !(toM >= fromM))
    throw new RangeError('a ladder of depths goes down from the first to the last by a step of more than 0 m');
  return Float64Array.from({ length: Math.floor((toM - fromM) / stepM + 1e-9) + 1 }, (_, i) => fromM + i * stepM);
}

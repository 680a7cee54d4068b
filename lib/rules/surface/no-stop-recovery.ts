import { noStop, type NoStop } from '../../ascent/no-stop';
import { NO_STOP_CAP_MIN } from '../../ascent/no-stop-cap';
import { breathedAt } from '../../ascent/breathed';
import type { Load } from '../../ascent/ceiling';
import type { Limits } from '../../ascent/limits';
import type { Gas } from '../../physics/gas';
import type { Timeline } from '../../dive/timeline';
import { tissuesSettledOnAir, type Tissues } from '../../tissue/tissues';
import { heliumAfter, minutesUntil, nitrogenAfter, restingAt } from './surface-interval';

/** The next dive someone has in mind. */
export interface NextDive {
  readonly depthM: number;
  readonly gas: Gas;
}

export interface NoStopRecovery {
  /** No-stop time of a diver with nothing left over, min; Infinity where it never ends. */
  readonly freshMin: number;
  /** The same if you went back down now. */
  readonly nowMin: number;
  /** How long on the surface until it is within a minute of the fresh diver's. */
  readonly recoveredAfterMin: number;
}

/** "Within a minute": the two show the same whole minutes, or nearly. */
const CLOSE_MIN = 1;

/** How the no-stop time of a next dive comes back on the surface; the way down is not counted. */
export function noStopRecovery(timeline: Timeline, limits: Limits, sample: number, next: NextDive): NoStopRecovery {
  const after = noStopAfter(timeline, limits, sample, next);
  const fresh = noStopOf(timeline, limits, freshTissues(timeline), next).minutes;
  const enoughMin = Math.min(fresh, NO_STOP_CAP_MIN) - CLOSE_MIN;
  return {
    freshMin: fresh,
    nowMin: after(0).minutes,
    recoveredAfterMin: minutesUntil((minutes) => after(minutes).minutes >= enoughMin),
  };
}

/** The no-stop time of a next dive after so many more minutes at the surface, as a function of them. */
export function noStopAfter(
  timeline: Timeline,
  limits: Limits,
  sample: number,
  next: NextDive,
): (minutes: number) => NoStop {
  const resting = restingAt(timeline, sample);
  return (minutes) =>
    noStopOf(
      timeline,
      limits,
      {
        nitrogenBar: Float64Array.from(resting, (one) => nitrogenAfter(one, minutes)),
        heliumBar: Float64Array.from(resting, (one) => heliumAfter(one, minutes)),
      },
      next,
    );
}

function freshTissues(timeline: Timeline): Tissues {
  return tissuesSettledOnAir(timeline.surfaceBar, timeline.conditions.model.respiratoryQuotient);
}

function noStopOf(timeline: Timeline, { gradientFactors }: Limits, tissues: Tissues, next: NextDive): NoStop {
  const { compartments, surfaceBar, barPerMetre } = timeline;
  const load: Load = { compartments, ...tissues, at: 0, surfaceBar, barPerMetre };
  const breathed = breathedAt(timeline, next.gas, surfaceBar + next.depthM * barPerMetre);
  return noStop(load, breathed, gradientFactors.high);
}

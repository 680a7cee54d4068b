import { nitrogenFraction } from '../../physics/gas';
import { COMPARTMENTS } from '../../tissue/coefficients';
import { haldane, schreiner } from '../../tissue/loading';
import { sampleAt, type Timeline } from '../../dive/timeline';
import type { SlowedWashoutSettings } from '../settings/slowed-washout-settings';
import type { Watch } from '../watch';

/**
 * ILLUSTRATIVE. A what-if, never the model: after each breach of the rate limit bubbles are imagined to hinder washout,
 * so that for a while a compartment that loses a gas does so with its half-time multiplied. Uptake is left alone. That
 * bubbles slow washout is taught; by how much and for how long is not known.
 *
 * Gives a second timeline with the samples of the first, whose tissues must not have been begun anew anywhere (the
 * body's, not those of a unit that lost its memory). Whether a compartment loses a gas is asked once for each sample, so
 * the figures depend a little on how many there are.
 * @param breachesS when the rate limit was breached, s: the times of a watch's `slow-down` events
 */
export function slowedWashout(
  timeline: Timeline,
  breachesS: readonly number[],
  settings: SlowedWashoutSettings,
): Timeline {
  if (breachesS.length === 0) return timeline;
  const slowed = slowedSamples(timeline, breachesS, settings.forMin * 60);
  const { compartments, gases } = timeline;
  return {
    ...timeline,
    nitrogenBar: carried(
      timeline,
      timeline.nitrogenBar,
      compartments.nitrogenK,
      gases.map(nitrogenFraction),
      slowed,
      settings.times,
    ),
    heliumBar: timeline.hasHelium
      ? carried(
          timeline,
          timeline.heliumBar,
          compartments.heliumK,
          gases.map(({ he }) => he),
          slowed,
          settings.times,
        )
      : timeline.heliumBar,
  };
}

/** When a unit said "slow down", s. */
export function breachesOf({ toldOnTheWay }: Pick<Watch, 'toldOnTheWay'>): number[] {
  return toldOnTheWay.filter(({ kind }) => kind === 'slow-down').map(({ timeS }) => timeS);
}

/** For each sample, whether washout is slowed from it to the next. */
function slowedSamples(timeline: Timeline, breachesS: readonly number[], forS: number): Uint8Array {
  const slowed = new Uint8Array(timeline.length);
  for (const breachS of breachesS)
    slowed.fill(1, sampleAt(timeline, breachS), sampleAt(timeline, breachS + forS - 1e-6) + 1);
  return slowed;
}

function carried(
  timeline: Timeline,
  usual: Float64Array,
  k: Float64Array,
  fractions: readonly number[],
  slowed: Uint8Array,
  times: number,
): Float64Array {
  const { length, timeS, ambientBar, lungOffsetBar, legs, leg } = timeline;
  const tensions = usual.slice();
  for (let i = slowed.indexOf(1) + 1; i < length; i += 1) {
    const minutes = (timeS[i]! - timeS[i - 1]!) / 60;
    if (minutes === 0) {
      tensions.copyWithin(i * COMPARTMENTS, (i - 1) * COMPARTMENTS, i * COMPARTMENTS);
      continue;
    }
    const fraction = fractions[legs[leg[i - 1]!]!.gas]!;
    const alveolar = (ambientBar[i - 1]! - lungOffsetBar) * fraction;
    const alveolarEnd = (ambientBar[i]! - lungOffsetBar) * fraction;
    const rate = (alveolarEnd - alveolar) / minutes;
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      const before = tensions[(i - 1) * COMPARTMENTS + c]!;
      const losing = slowed[i - 1] === 1 && before > alveolar;
      const ownK = losing ? k[c]! / times : k[c]!;
      tensions[i * COMPARTMENTS + c] =
        rate === 0 ? haldane(before, alveolar, ownK, minutes) : schreiner(before, alveolar, rate, ownK, minutes);
    }
  }
  return tensions;
}

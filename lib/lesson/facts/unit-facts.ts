import { afterDiveAt, type AfterDive } from '../../rules/surface/after-dive';
import { altitudeWait } from '../../rules/surface/altitude-wait';
import { flyingGuideline } from '../../rules/surface/flying-guideline';
import { divesKnownAt } from '../../rules/surface/after-dive';
import { isAsked } from '../../rules/safety-stop';
import { SAFETY_STOP_STATES } from '../../rules/safety-stop-state';
import { figuresInForce } from '../../rules/watch';
import type { View } from '../questions/subject';
import { NoValue, type MomentFact } from './fact';
import { MINUTE_S } from '../../quantity/duration';

const HOUR_MIN = 60;

function afterDive(view: View, sample: number): AfterDive {
  const after = afterDiveAt(view.watch(), sample);
  if (!after)
    throw new NoValue(
      'There is no wait before flying or climbing to tell: the diver is not at the surface after a dive then.',
    );
  return after;
}

/** What an instrument makes of the dive: its rules, and the time after it. */
export const UNIT_FACTS: readonly MomentFact[] = [
  {
    of: 'moment',
    name: 'rateMMin',
    dimension: 'rate',
    meaning: 'Speed as a unit measures it, averaged over a few seconds; positive upward.',
    noun: 'the rate of ascent',
    value: (view, sample) => view.watch().tracks.rateMMin[sample]!,
  },
  {
    of: 'moment',
    name: 'safetyStopLeftMin',
    dimension: 'time',
    meaning: 'What is left of the safety stop a unit advises; 0 when none is asked.',
    noun: 'what is left of the safety stop',
    format: 'clock',
    measure: 'safetyStopS',
    value(view, sample) {
      const { safetyStop, safetyStopLeftS } = view.watch().tracks;
      return isAsked(SAFETY_STOP_STATES[safetyStop[sample]!]!) ? safetyStopLeftS[sample]! / MINUTE_S : 0;
    },
  },
  {
    of: 'moment',
    name: 'imposedStopM',
    dimension: 'depth',
    meaning: 'Depth of a stop that a rule imposes; 0 without one.',
    noun: 'the imposed stop',
    format: 'stop',
    measure: 'stopM',
    value: (view, sample) => view.watch().tracks.imposedStopM[sample]!,
  },
  {
    of: 'moment',
    name: 'imposedStopLeftMin',
    dimension: 'time',
    meaning: 'What is left of a stop that a rule imposes.',
    noun: 'what is left of the imposed stop',
    format: 'clock',
    measure: 'imposedStopS',
    value: (view, sample) => view.watch().tracks.imposedStopLeftS[sample]! / MINUTE_S,
  },
  {
    of: 'moment',
    name: 'breaches',
    dimension: 'plain',
    meaning: 'How often the rise was too fast for too long, so far on this dive.',
    noun: 'the number of breaches of the rate limit',
    value: (view, sample) => view.watch().tracks.breaches[sample]!,
  },
  {
    of: 'moment',
    name: 'lockedMin',
    dimension: 'time',
    meaning: 'What is left of a lock-out; 0 when the unit is not locked.',
    noun: 'what is left of the lock-out',
    format: 'hours',
    measure: 'lockedH',
    value(view, sample) {
      const { tracks, timeline } = view.watch();
      return Math.max(0, tracks.lockedUntilS[sample]! - timeline.timeS[sample]!) / MINUTE_S;
    },
  },
  {
    of: 'moment',
    name: 'unitHighPercent',
    dimension: 'percent',
    meaning: 'The high gradient factor a unit goes by, drawn in by a penalty or not.',
    noun: 'the high gradient factor in force',
    value(view, sample) {
      return figuresInForce(view.watch(), sample).limits.gradientFactors.high * 100;
    },
  },
  {
    of: 'moment',
    name: 'sinceSurfacingMin',
    dimension: 'time',
    meaning: 'Time at the surface since the last dive; 0 under water.',
    noun: 'the time since surfacing',
    format: 'hours',
    value: (view, sample) => view.watch().tracks.surfaceTimeS[sample]! / MINUTE_S,
  },
  {
    of: 'moment',
    name: 'noFlyMin',
    dimension: 'time',
    dear: true,
    meaning: 'Wait left before flying: the model’s or the published guideline’s, whichever is longer.',
    noun: 'the wait before flying',
    format: 'hours',
    measure: 'noFlyH',
    value: (view, sample) => afterDive(view, sample).flying.hoursLeft * HOUR_MIN,
  },
  {
    of: 'moment',
    name: 'noFlyModelMin',
    dimension: 'time',
    dear: true,
    meaning: 'Wait left before flying by the model alone: until the tissues tolerate the pressure of the cabin.',
    noun: 'the model’s wait before flying',
    format: 'hours',
    measure: 'noFlyH',
    value: (view, sample) => afterDive(view, sample).flying.model.minutes,
  },
  {
    of: 'moment',
    name: 'noFlyGuidelineMin',
    dimension: 'time',
    dear: true,
    meaning: 'Wait left before flying by the published guideline alone.',
    noun: 'the guideline’s wait before flying',
    format: 'hours',
    measure: 'noFlyH',
    value(view, sample) {
      const { flying, sinceSurfacedS } = afterDive(view, sample);
      return flying.guideline ? Math.max(0, flying.guideline.hours * HOUR_MIN - sinceSurfacedS / MINUTE_S) : 0;
    },
  },
  {
    of: 'moment',
    name: 'altitudeWaitMin',
    dimension: 'time',
    dear: true,
    parameters: ['altitude'],
    meaning:
      'Wait left before going to an altitude: the model’s or, where it speaks of such altitudes, the guideline’s.',
    noun: 'the wait before going to {1}',
    format: 'hours',
    measure: 'noFlyH',
    value(view, sample, [altitudeM]) {
      const { sinceSurfacedS } = afterDive(view, sample);
      const watch = view.watch();
      const guideline = flyingGuideline(divesKnownAt(watch, sample), watch.rules.flyingWait.requiredStopsH);
      return (
        altitudeWait(
          watch.timeline,
          watch.figures.limits.gradientFactors.high,
          sample,
          altitudeM!,
          guideline,
          sinceSurfacedS,
        ).hoursLeft * HOUR_MIN
      );
    },
  },
  {
    of: 'moment',
    name: 'desaturationMin',
    dimension: 'time',
    dear: true,
    meaning: 'Time on air at the surface until no compartment holds more than at rest, to a hundredth of a bar.',
    noun: 'the time to desaturate',
    format: 'hours',
    measure: 'desaturationH',
    value: (view, sample) => afterDive(view, sample).desaturation.minutes,
  },
];

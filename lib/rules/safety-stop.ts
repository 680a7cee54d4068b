import { sayDepth } from '../quantity/depth';
import { eventKind } from './event';
import { ROUNDING_M, rule, type Moment } from './rule';
import { sayBand, sayIdealDepth, sayTime } from './say';
import type { SafetyStopState } from './safety-stop-state';
import { amount, onOff, oneOf, type ValuesOf } from './settings/setting';
import type { Unit } from './unit/unit';

/** An edge of the band is where a reading says it is: 20 ft is 6.096 m, and stands for 6 m. */
export const EDGE_M = 0.1;

const settings = {
  on: onOff(true),
  /** A dive deeper than this makes a stop due, m. */
  dueBelowM: amount(10, 1, 60),
  bandFromM: amount(3, 0.5, 20),
  bandToM: amount(6, 0.5, 20),
  idealM: amount(5, 0.5, 20),
  lastsS: amount(180, 10, 1800),
  /** Outside the band the time stands still, or what is left grows again by the time spent outside. */
  outside: oneOf(['pauses', 'extends'], 'pauses'),
};
type Settings = ValuesOf<typeof settings>;

const due = eventKind({
  kind: 'safety-stop-due',
  rule: 'safetyStop',
  meaning: 'You have been deep enough for a safety stop to be advised on the way up.',
  say: ({ belowM, lastsS, idealM }: { belowM: number; lastsS: number; idealM: number }, system) =>
    `you went below ${sayDepth(belowM, system)}. The unit will advise a safety stop of ${sayTime(lastsS)} near ${sayIdealDepth(idealM, system)}.`,
});
const counting = eventKind({
  kind: 'safety-stop-counting',
  rule: 'safetyStop',
  meaning: 'You are in the band of the safety stop and its time begins, or goes on, to run down.',
  say: ({ fromM, toM, leftS }: { fromM: number; toM: number; leftS: number }, system) =>
    `you are in the band from ${sayBand(fromM, toM, system)}: the safety stop counts, ${sayTime(leftS)} left.`,
});
const paused = eventKind({
  kind: 'safety-stop-paused',
  rule: 'safetyStop',
  meaning: 'You left the band of the safety stop; its time stands still, or grows, as set.',
  say: ({ fromM, toM, leftS, grows }: { fromM: number; toM: number; leftS: number; grows: number }, system) =>
    `you left the band from ${sayBand(fromM, toM, system)}: the safety stop ${grows ? 'grows again' : 'stands still'} at ${sayTime(leftS)} left.`,
});
const restarted = eventKind({
  kind: 'safety-stop-restarted',
  rule: 'safetyStop',
  meaning: 'You went back below the depth that makes a safety stop due; it starts over.',
  say: ({ belowM, lastsS }: { belowM: number; lastsS: number }, system) =>
    `you went back below ${sayDepth(belowM, system)}. The safety stop starts over at ${sayTime(lastsS)}.`,
});
const done = eventKind({
  kind: 'safety-stop-done',
  rule: 'safetyStop',
  meaning: 'The safety stop has run down.',
  say: (_: { lastsS: number }) => 'the safety stop is over.',
});
const skipped = eventKind({
  kind: 'safety-stop-skipped',
  rule: 'safetyStop',
  meaning: 'You surfaced before the safety stop was over. It was advice: for it, nothing is owed.',
  say: ({ leftS, owed }: { leftS: number; owed: number }) =>
    `you surfaced with ${sayTime(leftS)} of the safety stop left. It is advice, so for it the unit asks for nothing${owed ? '; a stop that has to be made is still owed' : ''}.`,
});
interface State {
  /** The whole stop with what has been added on this dive, s. */
  wholeS: number;
  begun: boolean;
}

/** A pause near the surface that is advised, never owed. */
export const safetyStop = rule({
  id: 'safetyStop',
  title: 'Safety stop',
  reason:
    'A few minutes near 5 m let the fastest compartments empty before the last metres, where pressure changes most in proportion, and slow the rise just there. It is advice for every dive; the model asks for none.',
  standing: 'common practice',
  settings,
  must: [
    {
      holds: (own) => own.bandFromM < own.bandToM,
      otherwise: 'the band of the safety stop ends above where it begins',
    },
    { holds: (own) => own.dueBelowM > own.bandToM, otherwise: 'the safety stop has to fall due deeper than its band' },
  ],
  events: [due, counting, paused, restarted, done, skipped],
  changesLessons: 'all',
  begin: (): State => ({ wholeS: 0, begun: false }),
  step(state, now, own, unit) {
    if (now.diveStarts) {
      unit.safetyStop = 'none';
      unit.safetyStopLeftS = 0;
      state.wholeS = own.lastsS;
      state.begun = false;
    }
    if (unit.extraSafetyStopS > 0) lengthen(state, own, unit);
    if (now.depthM > own.dueBelowM + ROUNDING_M) {
      if (state.begun) unit.tell(restarted, now.timeS, { belowM: own.dueBelowM, lastsS: state.wholeS });
      else if (unit.safetyStop === 'none')
        unit.tell(due, now.timeS, { belowM: own.dueBelowM, lastsS: state.wholeS, idealM: own.idealM });
      unit.safetyStop = 'due';
      unit.safetyStopLeftS = state.wholeS;
      state.begun = false;
    } else if (isAsked(unit.safetyStop)) {
      if (now.atSurface) {
        unit.safetyStop = 'skipped';
        unit.tell(skipped, now.timeS, { leftS: unit.safetyStopLeftS, owed: unit.stopOwed(now.sample) ? 1 : 0 });
      } else if (unit.stopOwed(now.sample)) {
        if (state.begun) unit.safetyStop = 'paused';
      } else if (isWithin(now.depthM, own.bandFromM, own.bandToM)) {
        count(state, now, own, unit);
      } else if (state.begun) {
        pause(state, now, own, unit);
      }
    }
  },
});

/** Whether a safety stop is asked for in a state, running or not. */
export function isAsked(state: SafetyStopState): boolean {
  return state === 'due' || state === 'counting' || state === 'paused';
}

/** Takes up the seconds a penalty adds; a stop that was over, or not due at all, falls due again. */
function lengthen(state: State, own: Settings, unit: Unit): void {
  const standingS = isAsked(unit.safetyStop) ? unit.safetyStopLeftS : unit.safetyStop === 'none' ? own.lastsS : 0;
  unit.safetyStopLeftS = standingS + unit.extraSafetyStopS;
  state.wholeS += unit.extraSafetyStopS;
  unit.extraSafetyStopS = 0;
  if (!isAsked(unit.safetyStop)) unit.safetyStop = 'due';
}

/** In the band: the time since the sample before counts if that was in the band as well. */
function count(state: State, now: Moment, own: Settings, unit: Unit): void {
  const stayed = unit.safetyStop === 'counting' && isWithin(now.depthBeforeM, own.bandFromM, own.bandToM);
  if (stayed) unit.safetyStopLeftS = Math.max(0, unit.safetyStopLeftS - now.elapsedS);
  else unit.tell(counting, now.timeS, { fromM: own.bandFromM, toM: own.bandToM, leftS: unit.safetyStopLeftS });
  unit.safetyStop = 'counting';
  state.begun = true;
  if (unit.safetyStopLeftS <= 0) {
    unit.safetyStop = 'done';
    unit.tell(done, now.timeS, { lastsS: state.wholeS });
  }
}

function pause(state: State, now: Moment, own: Settings, unit: Unit): void {
  const grows = own.outside === 'extends';
  const { bandFromM: fromM, bandToM: toM } = own;
  if (grows) unit.safetyStopLeftS = Math.min(state.wholeS, unit.safetyStopLeftS + now.elapsedS);
  if (unit.safetyStop === 'counting')
    unit.tell(paused, now.timeS, { fromM, toM, leftS: unit.safetyStopLeftS, grows: grows ? 1 : 0 });
  unit.safetyStop = 'paused';
}

/** Whether a depth is in a band, its edges being as wide as a reading. */
export function isWithin(depthM: number, fromM: number, toM: number): boolean {
  return depthM >= fromM - EDGE_M - ROUNDING_M && depthM <= toM + EDGE_M + ROUNDING_M;
}

import { printStopDepth, sayDepth } from '../quantity/depth';
import { SAME_DEPTH_M } from '../ascent/ceiling';
import { eventKind } from './event';
import { ROUNDING_M, rule } from './rule';
import { sayTime } from './say';
import { amount, onOff } from './settings/setting';

const settings = {
  on: onOff(false),
  /** Where the stop is, m; a diver already shallower is given one at `shallowM`, shallower still none. */
  depthM: amount(6, 2, 30),
  shallowM: amount(3, 1, 30),
  /** It counts within this of its depth, and may not be passed by more than this, m. */
  withinM: amount(1.5, 0.3, 3),
  /** The first breach of a dive asks for this, s; the second for twice as much more, and so on. */
  lastsS: amount(120, 30, 1200),
  mostS: amount(900, 30, 3600),
};

const imposed = eventKind({
  kind: 'stop-imposed',
  rule: 'imposedStop',
  meaning: 'After a breach of the rate limit the unit adds a stop that must be made, whatever the tissues allow.',
  say: (
    {
      riseM,
      overS,
      depthM,
      leftS,
      direct,
    }: { riseM: number; overS: number; depthM: number; leftS: number; direct: number; breach: number },
    system,
  ) =>
    `you rose ${sayDepth(riseM, system)} in ${sayTime(overS)}. The unit adds a required stop at ${printStopDepth(depthM, system)} for ${sayTime(leftS)}${direct ? ', though the model allows you to go straight up' : ''}.`,
});
const made = eventKind({
  kind: 'imposed-stop-done',
  rule: 'imposedStop',
  meaning: 'The imposed stop has been made.',
  say: ({ depthM }: { depthM: number }, system) => `the imposed stop at ${printStopDepth(depthM, system)} is done.`,
});
const missed = eventKind({
  kind: 'imposed-stop-missed',
  rule: 'imposedStop',
  meaning: 'You stayed at the surface past the grace time with part of the imposed stop left.',
  say: ({ depthM, leftS }: { depthM: number; leftS: number }, system) =>
    `the unit gave up the imposed stop at ${printStopDepth(depthM, system)}, ${sayTime(leftS)} of it not made.`,
});

/** A fast rise is answered with a stop the unit requires, though the tissues ask for none. */
export const imposedStop = rule({
  id: 'imposedStop',
  title: 'Required stop after a fast rise',
  reason:
    'The unit takes bubbles for likely after a fast rise and makes you wait, where the model sees dissolved gas only and may allow a direct ascent. It is the rule’s demand, not the model’s.',
  standing: 'illustrative',
  settings,
  events: [imposed, made, missed],
  begin: () => ({ askedS: 0 }),
  step(state, now, own, unit) {
    if (now.diveStarts) {
      state.askedS = 0;
      unit.imposedStopM = 0;
      unit.imposedStopLeftS = 0;
    }
    if (unit.imposedStopM > 0) {
      if (now.atSurface && unit.graceOver) {
        unit.tell(missed, now.timeS, { depthM: unit.imposedStopM, leftS: unit.imposedStopLeftS });
        unit.imposedStopM = 0;
        unit.imposedStopLeftS = 0;
      } else if (
        isWithin(now.depthM, unit.imposedStopM, own.withinM) &&
        isWithin(now.depthBeforeM, unit.imposedStopM, own.withinM)
      ) {
        unit.imposedStopLeftS = Math.max(0, unit.imposedStopLeftS - now.elapsedS);
        if (unit.imposedStopLeftS === 0) {
          unit.tell(made, now.timeS, { depthM: unit.imposedStopM });
          unit.imposedStopM = 0;
        }
      }
    }
    if (unit.breach > 0 && !now.atSurface) {
      const stopM =
        now.depthM >= own.depthM - ROUNDING_M ? own.depthM : now.depthM >= own.shallowM - ROUNDING_M ? own.shallowM : 0;
      const asksS = Math.min(own.lastsS * unit.breach, own.mostS - state.askedS);
      if (stopM > 0 && asksS > 0) {
        state.askedS += asksS;
        unit.imposedStopM = Math.max(unit.imposedStopM, stopM);
        unit.imposedStopLeftS += asksS;
        const { breach, breachRiseM: riseM, breachOverS: overS, imposedStopM: depthM, imposedStopLeftS: leftS } = unit;
        const direct = unit.figures.ceilingM[now.sample]! > 0 ? 0 : 1;
        unit.tell(imposed, now.timeS, { riseM, overS, depthM, leftS, direct, breach });
      }
    }
    unit.imposedCeilingM = unit.imposedStopM > 0 ? Math.max(0, unit.imposedStopM - own.withinM) : 0;
  },
});

function isWithin(depthM: number, stopM: number, withinM: number): boolean {
  return Math.abs(depthM - stopM) <= withinM + SAME_DEPTH_M;
}

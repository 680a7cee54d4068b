import { sayDepth } from '../quantity/depth';
import { eventKind } from './event';
import { rule } from './rule';
import { sayTime } from './say';
import { amount, onOff } from './settings/setting';

const settings = {
  on: onOff(true),
  /** The first breach of a dive adds this, s; the second twice as much, and so on. */
  addsS: amount(60, 10, 600),
  /** The most that a dive's breaches add together, s. */
  mostS: amount(600, 10, 3600),
};

const lengthened = eventKind({
  kind: 'safety-stop-lengthened',
  rule: 'longerSafetyStop',
  meaning: 'After a breach of the rate limit the unit makes the safety stop longer.',
  say: ({ riseM, overS, addsS }: { riseM: number; overS: number; addsS: number; breach: number }, system) =>
    `you rose ${sayDepth(riseM, system)} in ${sayTime(overS)}. The unit makes the safety stop ${sayTime(addsS)} longer.`,
});

/** A fast rise is answered with a longer safety stop. */
export const longerSafetyStop = rule({
  id: 'longerSafetyStop',
  title: 'Longer safety stop after a fast rise',
  reason:
    'The mildest answer: what a fast rise left undone is made up for near the surface. It stays advice. The model’s own tensions are what they are; how long would make up for it is not known.',
  standing: 'illustrative',
  settings,
  events: [lengthened],
  changesLessons: [6, 8, 16, 18],
  begin: () => ({ addedS: 0 }),
  step(state, now, own, unit) {
    if (now.diveStarts) state.addedS = 0;
    if (unit.breach === 0) return;
    const addsS = Math.min(own.addsS * unit.breach, own.mostS - state.addedS);
    if (addsS <= 0) return;
    state.addedS += addsS;
    unit.extraSafetyStopS += addsS;
    const { breach, breachRiseM: riseM, breachOverS: overS } = unit;
    unit.tell(lengthened, now.timeS, { riseM, overS, addsS, breach });
  },
});

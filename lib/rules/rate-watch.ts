import { sayDepth } from '../quantity/depth';
import { fastestWithin, printRateLimit } from '../quantity/rate';
import { eventKind } from './event';
import { RATE_PRESETS, rateLimitAt } from './settings/rate-limits';
import { rule } from './rule';
import { sayTime } from './say';
import { amount, onOff, rateLimit, type ValuesOf } from './settings/setting';

/** Names of the levels, by number. */
export const RATE_LEVELS = ['easy', 'brisk', 'too fast', 'far too fast'] as const;
export type RateLevel = (typeof RATE_LEVELS)[number];
const TOO_FAST = 2;
/** Parts of a limit, and seconds of a run, smaller than this are rounding. */
export const RATE_ROUNDING = 1e-6;

const settings = {
  on: onOff(true),
  /** The speed is the average over so many seconds. */
  averageS: amount(5, 1, 30),
  limit: rateLimit(RATE_PRESETS.current.limit),
  /** From which part of the limit on a rise is brisk. */
  briskFrom: amount(0.8, 0.1, 1),
  /** Beyond which multiple of the limit it is far too fast. */
  farTooFastFrom: amount(1.5, 1, 5),
  /** A level is left only once the speed is this part of the limit below where the level begins. */
  hysteresis: amount(0.1, 0, 0.5),
  /** Too fast for so long is a breach, and the unit says "slow down". */
  slowDownAfterS: amount(5, 0, 60),
};
type Settings = ValuesOf<typeof settings>;

const slowDown = eventKind({
  kind: 'slow-down',
  rule: 'rateWatch',
  meaning: 'You rose faster than the limit for longer than the unit lets pass; it counts as one breach.',
  say: ({ riseM, overS, limitMMin }: { riseM: number; overS: number; limitMMin: number; breach: number }, system) =>
    `you rose ${sayDepth(riseM, system)} in ${sayTime(overS)}. The unit says “slow down”: it allows ${printRateLimit(limitMMin, system)} here.`,
});

const slowedDown = eventKind({
  kind: 'slowed-down',
  rule: 'rateWatch',
  meaning: 'A breach is over: your speed is within the limit again, or you are at the surface.',
  say: ({ riseM, overS, surfaced }: { riseM: number; overS: number; surfaced: number }, system) =>
    `${surfaced ? 'you reached the surface' : 'you had slowed down'}. In all you rose ${sayDepth(riseM, system)} in ${sayTime(overS)}.`,
});

interface State {
  /** When the speed became too fast; NaN while it is not. */
  sinceS: number;
  /** Where the too fast climb began. */
  fromS: number;
  fromM: number;
  /** When it was last rising. */
  risingS: number;
  breaching: boolean;
  breaches: number;
}

/** Watches how fast you rise, and counts how often that was too fast for too long. */
export const rateWatch = rule({
  id: 'rateWatch',
  title: 'Rate watch',
  reason:
    'A fast rise leaves dissolved gas less time to go and lets bubbles grow: divers rising at 17 m/min had more of them than at 9 m/min (Carturan and others, 2000). The limit is guidance; nothing special happens at exactly that speed.',
  standing: 'common practice',
  settings,
  events: [slowDown, slowedDown],
  changesLessons: 'all',
  begin: (): State => ({ sinceS: NaN, fromS: 0, fromM: 0, risingS: 0, breaching: false, breaches: 0 }),
  step(state, now, own, unit) {
    unit.breach = 0;
    if (now.diveStarts) state.breaches = 0;
    if (now.depthM < now.depthBeforeM) state.risingS = now.timeS;
    const limitMMin = rateLimitAt(own.limit, now.depthM);
    const resting = now.atSurface && !now.surfaces;
    const level = resting ? 0 : levelOf(now.rateMMin, limitMMin, unit.rateLevel, own);
    if (level >= TOO_FAST) {
      if (Number.isNaN(state.sinceS)) {
        const averagedFromS = now.timeS - own.averageS;
        const wholeClimb = now.climbFromS >= averagedFromS;
        state.sinceS = now.timeS;
        state.fromS = wholeClimb ? now.climbFromS : averagedFromS;
        state.fromM = wholeClimb ? now.climbFromM : now.depthM + (now.rateMMin * own.averageS) / 60;
      }
      if (!state.breaching && now.timeS - state.sinceS >= own.slowDownAfterS - RATE_ROUNDING) {
        state.breaching = true;
        state.breaches += 1;
        unit.breach = state.breaches;
        unit.breachRiseM = state.fromM - now.depthM;
        unit.breachOverS = now.timeS - state.fromS;
        if (unit.dive) unit.dive.breaches = state.breaches;
        unit.tell(slowDown, now.timeS, {
          riseM: unit.breachRiseM,
          overS: unit.breachOverS,
          limitMMin,
          breach: state.breaches,
        });
      }
    }
    if (level < TOO_FAST || now.atSurface) {
      if (state.breaching) {
        unit.tell(slowedDown, now.timeS, {
          riseM: state.fromM - now.depthM,
          overS: state.risingS - state.fromS,
          surfaced: now.atSurface ? 1 : 0,
        });
      }
      state.sinceS = NaN;
      state.breaching = false;
    }
    unit.rateLevel = now.atSurface ? 0 : level;
    unit.alarm('slow-down', state.breaching);
  },
});

/** From which speed on each level is, m/min, brisk first; too fast is only what is beyond the limit in either system. */
export function levelsFrom(limitMMin: number, own: Pick<Settings, 'briskFrom' | 'farTooFastFrom'>) {
  const fastest = fastestWithin(limitMMin);
  return [own.briskFrom * limitMMin, fastest, own.farTooFastFrom * fastest] as const;
}

/** The level of a speed; one once reached is held until the speed is clearly below it. */
function levelOf(rateMMin: number, limitMMin: number, before: number, own: Settings): number {
  const [brisk, tooFast, far] = levelsFrom(limitMMin, own);
  const rounding = RATE_ROUNDING * limitMMin;
  const level =
    rateMMin > far + rounding ? 3 : rateMMin > tooFast + rounding ? 2 : rateMMin >= brisk - rounding ? 1 : 0;
  for (let held = before; held > level; held -= 1) {
    const from = held === 3 ? far : held === 2 ? tooFast : brisk;
    if (rateMMin > from - own.hysteresis * limitMMin - rounding) return held;
  }
  return level;
}

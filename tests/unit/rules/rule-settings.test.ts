import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES, RULES } from '@/lib/rules/all';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';

/** Least, usual and most: common practice without a source where the rule doesn't name one. */
type Numbers = Readonly<Record<string, readonly [least: number, usual: number, most: number]>>;

const NUMBERS: Readonly<Record<string, Numbers>> = {
  rateWatch: {
    averageS: [1, 5, 30],
    briskFrom: [0.1, 0.8, 1],
    farTooFastFrom: [1, 1.5, 5],
    hysteresis: [0, 0.1, 0.5],
    slowDownAfterS: [0, 5, 60],
  },
  tighterLimits: { by: [0.01, 0.1, 0.5], floor: [0.1, 0.5, 1], mostTimes: [1, 3, 9] },
  imposedStop: {
    depthM: [2, 6, 30],
    shallowM: [1, 3, 30],
    withinM: [0.3, 1.5, 3],
    lastsS: [30, 120, 1200],
    mostS: [30, 900, 3600],
  },
  longerSafetyStop: { addsS: [10, 60, 600], mostS: [10, 600, 3600] },
  requiredStops: { slackM: [0, 0.1, 1], graceS: [0, 60, 600] },
  safetyStop: {
    dueBelowM: [1, 10, 60],
    bandFromM: [0.5, 3, 20],
    bandToM: [0.5, 6, 20],
    idealM: [0.5, 5, 20],
    lastsS: [10, 180, 1800],
  },
  // A cabin is kept at 8,000 ft at most (14 CFR 25.841).
  flyingWait: { cabinM: [0, 2438.4, 6000], requiredStopsH: [18, 24, 72] },
  slowedWashout: { times: [1, 2, 10], forMin: [1, 30, 1440] },
};

const given = (rule: string, setting: string, value: unknown) =>
  ruleSettingsSchema.safeParse({ [rule]: { [setting]: value } });
/** Some numbers depend on others, such as the ends of a band: of those only what is out of range for all is asked. */
const refusals = (rule: string, setting: string, value: number) =>
  (given(rule, setting, value).error?.issues ?? []).filter(({ code }) => code !== 'custom').map(({ code }) => code);

describe.each(Object.entries(NUMBERS))('the numbers of %s', (rule, numbers) => {
  it.each(Object.entries(numbers))('%s may go from least to most, %j', (setting, [least, usual, most]) => {
    expect((DEFAULT_RULES as unknown as Record<string, Record<string, number>>)[rule]![setting]).toBe(usual);
    for (const value of [least, usual, most]) expect(refusals(rule, setting, value)).toEqual([]);
    expect(refusals(rule, setting, least - 0.001)).toContain('too_small');
    expect(refusals(rule, setting, most + 0.001)).toContain('too_big');
  });
});

describe('the rules', () => {
  it('are all here with all their numbers', () => {
    for (const { id, settings } of RULES)
      expect(
        Object.entries(settings).flatMap(([name, { may }]) => (typeof may === 'object' && 'from' in may ? [name] : [])),
      ).toEqual(Object.keys(NUMBERS[id] ?? {}));
  });

  it('are on or off unless set otherwise', () => {
    expect(Object.entries(DEFAULT_RULES).flatMap(([id, { on }]) => (on ? [id] : []))).toEqual([
      'rateWatch',
      'longerSafetyStop',
      'requiredStops',
      'lockOut',
      'safetyStop',
      'flyingWait',
    ]);
  });

  it('lock for a day or two, pause or lengthen a safety stop, and nothing else', () => {
    expect(DEFAULT_RULES.lockOut.hours).toBe(48);
    expect([24, 48, 36, 0].map((hours) => given('lockOut', 'hours', hours).success)).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(DEFAULT_RULES.safetyStop.outside).toBe('pauses');
    expect(['pauses', 'extends', 'x'].map((value) => given('safetyStop', 'outside', value).success)).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('count their times in whole numbers', () => expect(given('tighterLimits', 'mostTimes', 2.5).success).toBe(false));

  it('take a rate limit that is one figure, or bands of which one begins at the surface', () => {
    const limit = (value: unknown) => given('rateWatch', 'limit', value).success;
    const bands = (...fromM: number[]) => ({ kind: 'banded', bands: fromM.map((from) => ({ fromM: from, mMin: 9 })) });
    expect(DEFAULT_RULES.rateWatch.limit).toEqual({ kind: 'steady', mMin: 9 });
    expect([0, 0.1, 60, 60.1].map((mMin) => limit({ kind: 'steady', mMin }))).toEqual([false, true, true, false]);
    expect([bands(), bands(0), bands(5), bands(350, 0), bands(350.1, 0), bands(-1, 0)].map(limit)).toEqual([
      false,
      true,
      false,
      true,
      false,
      false,
    ]);
  });
});

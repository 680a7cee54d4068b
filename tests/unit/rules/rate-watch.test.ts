import { describe, expect, it } from 'vitest';
import { RATE_LEVELS } from '@/lib/rules/rate-watch';
import { RATE_PRESETS, rateLimitAt } from '@/lib/rules/settings/rate-limits';
import { rateLimitSchema } from '@/lib/rules/settings/rate-limit-schema';
import { at, down, rest, setupOf, stay, told, up, watched } from './made-dives';

/** 20 s down to 40 m, a minute there, then up at a rate for some seconds. Climbs begin at 80 s. */
const climb = (mMin: number, durationS: number) => [
  down(40, 20),
  stay(60),
  up(40 - (mMin * durationS) / 60, durationS),
  stay(60),
];
const levelAt = (mMin: number, timeS: number) => {
  const watch = watched(climb(mMin, 60));
  return RATE_LEVELS[watch.tracks.rateLevel[at(watch, timeS)]!];
};

describe('the rate watch', () => {
  it.each([
    [5, 'easy'],
    [7.1, 'easy'],
    [7.2, 'brisk'],
    [9, 'brisk'],
    // 30 ft/min: the same limit in feet.
    [9.144, 'brisk'],
    [9.2, 'too fast'],
    [13.7, 'too fast'],
    [13.8, 'far too fast'],
  ])('calls %s m/min %s where the limit is 9', (mMin, level) => {
    expect(levelAt(mMin, 120)).toBe(level);
  });

  it.each([
    ['current', 9, 30],
    ['buhlmann', 10, 33],
    ['classic', 18, 60],
  ] as const)(
    'has one limit in both systems: under %s whoever rises at %s m/min or at %s ft/min keeps it',
    (name, metres, feet) => {
      const breaches = (mMin: number) =>
        watched(climb(mMin, 60), { rateWatch: { limit: RATE_PRESETS[name].limit } }).dives[0]!.breaches;
      expect([metres, feet * 0.3048, (feet + 1) * 0.3048].map(breaches)).toEqual([0, 0, 1]);
    },
  );

  it.each([
    [2, 7.2],
    [5, 18],
    [10, 18],
  ])('averages over five seconds: %s s into a rise of 18 m/min it reads %s', (intoS, mMin) => {
    const watch = watched(climb(18, 30));
    expect(watch.tracks.rateMMin[at(watch, 80 + intoS)]).toBeCloseTo(mMin, 9);
  });

  it('averages over as long as it is set to', () => {
    const watch = watched(climb(18, 30), { rateWatch: { averageS: 10 } });
    expect(watch.tracks.rateMMin[at(watch, 85)]).toBeCloseTo(9, 9);
  });

  it('reads a descent as a negative speed and never as too fast', () => {
    const watch = watched([down(40, 20), stay(60)]);
    expect(watch.tracks.rateMMin[at(watch, 15)]).toBeCloseTo(-120, 9);
    expect(Math.max(...watch.tracks.rateLevel)).toBe(0);
  });

  it('holds a level until the speed is a tenth of the limit below it', () => {
    const steps = (mMin: number) => [down(40, 20), stay(60), up(37, 18), up(37 - mMin, 60), stay(60)];
    const levelOf = (mMin: number) => {
      const watch = watched(steps(mMin));
      return RATE_LEVELS[watch.tracks.rateLevel[at(watch, 130)]!];
    };
    expect(levelOf(8.5)).toBe('too fast');
    expect(levelOf(8)).toBe('brisk');
    expect(levelOf(6.6)).toBe('brisk');
    expect(levelOf(6.2)).toBe('easy');
  });

  it('says slow down once the rise has been too fast for five seconds', () => {
    // The average passes 9 m/min after the third second of a climb at 18 m/min.
    expect(told(watched(climb(18, 30)), 'rateWatch')).toEqual(['88 slow-down', '113 slowed-down']);
  });

  it('lets a short burst pass', () => {
    expect(told(watched(climb(18, 3)), 'rateWatch')).toEqual([]);
  });

  it('waits as long as it is set to', () => {
    expect(told(watched(climb(18, 30), { rateWatch: { slowDownAfterS: 12 } }), 'rateWatch')).toEqual([
      '95 slow-down',
      '113 slowed-down',
    ]);
  });

  it('tells how far and how long you rose', () => {
    const [slowDown, slowed] = watched(climb(18, 30)).events.filter(({ rule }) => rule === 'rateWatch');
    expect(slowDown!.numbers).toMatchObject({ riseM: expect.closeTo(2.4, 9), overS: 8, limitMMin: 9, breach: 1 });
    expect(slowDown!.text).toBe('At 1:28 you rose 2.4 m in 8 s. The unit says “slow down”: it allows 9 m/min here.');
    expect(slowed!.text).toBe('At 1:53 you had slowed down. In all you rose 9 m in 30 s.');
  });

  it('of a climb that grows too fast on the way tells what lies in the seconds averaged over, and since', () => {
    // 5 m/min to 25 m at 360 s, then 20: 9 m/min over 5 s are passed at 362 s, so that it counts from 357 s and 25.25 m.
    const watch = watched([down(30, 100), stay(200), up(25, 60), up(15, 30), stay(60)]);
    const [slowDown, slowedDown] = watch.events.filter(({ rule }) => rule === 'rateWatch');
    expect(slowDown).toMatchObject({
      timeS: 367,
      numbers: { riseM: expect.closeTo(25.25 - (25 - 7 / 3), 9), overS: 10, limitMMin: 9, breach: 1 },
    });
    expect(slowedDown).toMatchObject({ numbers: { riseM: expect.closeTo(10.25, 9), overS: 33, surfaced: 0 } });
  });

  it('counts each breach of a dive and begins anew on the next', () => {
    const twice = [
      down(40, 20),
      stay(60),
      up(31, 30),
      stay(60),
      up(22, 30),
      stay(60),
      up(1, 180),
      up(0, 60),
      rest(3600),
      ...climb(18, 30),
    ];
    const watch = watched(twice);
    expect(told(watch, 'rateWatch').filter((line) => line.includes('slow-down'))).toHaveLength(3);
    expect(watch.dives.map(({ breaches }) => breaches)).toEqual([2, 1]);
    expect(watch.tracks.breaches[at(watch, 260)]).toBe(2);
  });

  it('ends a breach at the surface', () => {
    const watch = watched([down(10, 20), stay(60), up(0, 20), rest(600)]);
    expect(told(watch, 'rateWatch')).toEqual(['87 slow-down', '100 slowed-down']);
    expect(watch.tracks.rateLevel[at(watch, 120)]).toBe(0);
    expect(watch.tracks.rateMMin[at(watch, 120)]).toBe(0);
  });

  it('is not misled by a constant error of the sensor', () => {
    const right = watched([down(10, 60), up(0, 60)]);
    const deep = watched([down(10, 60), up(0, 60)], {}, setupOf({ depthOffsetM: 2 }));
    expect(deep.tracks.rateMMin).toEqual(right.tracks.rateMMin);
  });

  it('reads a scaled sensor’s speed scaled too', () => {
    const watch = watched(climb(10, 30), {}, { depthScale: 1.1 });
    expect(watch.tracks.rateMMin[at(watch, 100)]).toBeCloseTo(11, 9);
  });
});

describe('a rate limit', () => {
  it.each([
    [40, 18],
    [30, 18],
    [29.9, 10],
    [10, 10],
    [9.9, 6],
    [0, 6],
  ])('in bands at %s m is %s m/min', (depthM, mMin) => {
    expect(rateLimitAt(RATE_PRESETS.banded.limit, depthM)).toBe(mMin);
  });

  it('does not care in which order its bands are written', () => {
    const limit = rateLimitSchema.parse({
      kind: 'banded',
      bands: [
        { fromM: 0, mMin: 6 },
        { fromM: 20, mMin: 12 },
        { fromM: 10, mMin: 9 },
      ],
    });
    expect([5, 15, 25].map((depthM) => rateLimitAt(limit, depthM))).toEqual([6, 9, 12]);
  });

  it('in bands has to reach the surface', () => {
    expect(rateLimitSchema.safeParse({ kind: 'banded', bands: [{ fromM: 5, mMin: 6 }] }).success).toBe(false);
  });

  it.each([
    ['classic', 18],
    ['current', 9],
    ['buhlmann', 10],
  ] as const)('preset %s is %s m/min', (name, mMin) => {
    expect(rateLimitAt(RATE_PRESETS[name].limit, 12)).toBe(mMin);
  });
});

import { describe, expect, it } from 'vitest';
import { EVENT_KINDS, eventText, type RuleEventKind } from '@/lib/rules/all';

const RISE = { riseM: 12.2, overS: 75, breach: 1 };

/** Each kind of event with figures that tell every word of it apart, in metres and in feet. */
const SENTENCES: readonly (readonly [
  RuleEventKind,
  Readonly<Record<string, number>>,
  metric: string,
  imperial?: string,
])[] = [
  ['memory-lost', { forgotten: 1 }, 'the unit starts with fresh tissues. It knows nothing of the dive before.'],
  ['memory-lost', { forgotten: 2 }, 'the unit starts with fresh tissues. It knows nothing of the 2 dives before.'],
  [
    'slow-down',
    { ...RISE, limitMMin: 9 },
    'you rose 12.2 m in 1 min 15 s. The unit says “slow down”: it allows 9 m/min here.',
    'you rose 40 ft in 1 min 15 s. The unit says “slow down”: it allows 30 ft/min here.',
  ],
  ['slowed-down', { ...RISE, surfaced: 0 }, 'you had slowed down. In all you rose 12.2 m in 1 min 15 s.'],
  ['slowed-down', { ...RISE, surfaced: 1 }, 'you reached the surface. In all you rose 12.2 m in 1 min 15 s.'],
  [
    'limits-tightened',
    { high: 0.75, times: 1 },
    'the unit draws its limits in after that rise: it goes by a high gradient factor of 75% for the rest of this dive and the next.',
  ],
  ['limits-restored', { high: 0.85 }, 'the unit goes by its own limits again, a high gradient factor of 85%.'],
  [
    'stop-imposed',
    { ...RISE, depthM: 6, leftS: 120, direct: 1 },
    'you rose 12.2 m in 1 min 15 s. The unit adds a required stop at 6 m for 2 min, though the model allows you to go straight up.',
    'you rose 40 ft in 1 min 15 s. The unit adds a required stop at 20 ft for 2 min, though the model allows you to go straight up.',
  ],
  [
    'stop-imposed',
    { ...RISE, depthM: 6, leftS: 120, direct: 0 },
    'you rose 12.2 m in 1 min 15 s. The unit adds a required stop at 6 m for 2 min.',
  ],
  ['imposed-stop-done', { depthM: 6 }, 'the imposed stop at 6 m is done.', 'the imposed stop at 20 ft is done.'],
  [
    'imposed-stop-missed',
    { depthM: 6, leftS: 75 },
    'the unit gave up the imposed stop at 6 m, 1 min 15 s of it not made.',
  ],
  [
    'safety-stop-lengthened',
    { ...RISE, addsS: 60 },
    'you rose 12.2 m in 1 min 15 s. The unit makes the safety stop 1 min longer.',
  ],
  [
    'stop-owed',
    { stopM: 6 },
    'a stop is owed: there is a ceiling, and coming up you need to stop at 6 m.',
    'a stop is owed: there is a ceiling, and coming up you need to stop at 20 ft.',
  ],
  ['first-stop-moved', { stopM: 9, beforeM: 6 }, 'the first stop has moved down to 9 m.'],
  ['first-stop-moved', { stopM: 3, beforeM: 6 }, 'the first stop has moved up to 3 m.'],
  [
    'ceiling-clears',
    {},
    'there is a ceiling, but coming up at the plan’s rate you would find it gone. No stop is needed.',
  ],
  ['way-up-fills', { stopM: 3 }, 'there is no ceiling yet, but the way up takes up enough gas to need a stop at 3 m.'],
  ['nothing-owed', {}, 'there is no ceiling any more, and the way up needs no stop. Nothing is owed.'],
  [
    'above-ceiling',
    { depthM: 2, ceilingM: 3.41, graceS: 60 },
    'you are at 2 m, above the ceiling at 3.5 m. The unit gives you 1 min to go back down.',
    'you are at 7 ft, above the ceiling at 12 ft. The unit gives you 1 min to go back down.',
  ],
  [
    'above-ceiling',
    { depthM: 0, ceilingM: 3.41, graceS: 60 },
    'you are at the surface with a stop still owed. The unit counts it as left out in 1 min.',
  ],
  ['below-ceiling-again', { depthM: 4, aboveS: 30 }, 'you are below the ceiling again, at 4 m, after 30 s above it.'],
  ['grace-over', { graceS: 60 }, 'you have been above the ceiling for 1 min: the unit’s grace time is over.'],
  [
    'locked-out',
    { hours: 48 },
    'you are at the surface with a required stop left out. The unit locks: for 48 h it shows depth and time only.',
  ],
  ['lock-over', {}, 'the lock is over. The unit works again.'],
  [
    'flying-wait-began',
    { hours: 12.01, basis: 0 },
    'you surfaced. The unit counts 12 h 15 min until flying, which is what its own tissues need.',
  ],
  [
    'flying-wait-began',
    { hours: 18, basis: 1 },
    'you surfaced. The unit counts 18 h until flying, as the published guideline has it.',
  ],
  [
    'flying-wait-began',
    { hours: Infinity, basis: 0 },
    'you surfaced. The unit counts longer than can be told until flying, which is what its own tissues need.',
  ],
  [
    'flying-wait-began',
    { hours: 24, basis: 2 },
    'you surfaced. The unit counts 24 h until flying, which it is set to after required stops, where the guideline gives no figure.',
  ],
  [
    'safety-stop-due',
    { belowM: 10, lastsS: 180, idealM: 5 },
    'you went below 10 m. The unit will advise a safety stop of 3 min near 5 m.',
    'you went below 33 ft. The unit will advise a safety stop of 3 min near 15 ft.',
  ],
  [
    'safety-stop-counting',
    { fromM: 3, toM: 6, leftS: 75 },
    'you are in the band from 3 to 6 m: the safety stop counts, 1 min 15 s left.',
  ],
  [
    'safety-stop-paused',
    { fromM: 3, toM: 6, leftS: 75, grows: 0 },
    'you left the band from 3 to 6 m: the safety stop stands still at 1 min 15 s left.',
  ],
  [
    'safety-stop-paused',
    { fromM: 3, toM: 6, leftS: 75, grows: 1 },
    'you left the band from 3 to 6 m: the safety stop grows again at 1 min 15 s left.',
  ],
  [
    'safety-stop-restarted',
    { belowM: 10, lastsS: 180 },
    'you went back below 10 m. The safety stop starts over at 3 min.',
  ],
  ['safety-stop-done', { lastsS: 180 }, 'the safety stop is over.'],
  [
    'safety-stop-skipped',
    { leftS: 75, owed: 0 },
    'you surfaced with 1 min 15 s of the safety stop left. It is advice, so for it the unit asks for nothing.',
  ],
  [
    'safety-stop-skipped',
    { leftS: 75, owed: 1 },
    'you surfaced with 1 min 15 s of the safety stop left. It is advice, so for it the unit asks for nothing; a stop that has to be made is still owed.',
  ],
];

describe('what a unit tells', () => {
  it.each(SENTENCES.map(([kind, numbers, metric, imperial]) => ({ kind, numbers, metric, imperial })))(
    'of $kind with $numbers',
    ({ kind, numbers, metric, imperial }) => {
      const event = { kind, at: 'At 1:00', numbers };
      expect(eventText(event, 'metric')).toBe(`At 1:00 ${metric}`);
      if (imperial !== undefined) expect(eventText(event, 'imperial')).toBe(`At 1:00 ${imperial}`);
    },
  );

  it('is here for every kind of event', () => {
    const told = new Set<string>(SENTENCES.map(([kind]) => kind));
    expect(Object.keys(EVENT_KINDS).filter((kind) => !told.has(kind))).toEqual([]);
  });
});

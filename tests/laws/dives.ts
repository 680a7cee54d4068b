import fc from 'fast-check';
import { DEEPEST_M, SHORTEST_S } from '@/lib/dive/bounds';
import type { Dive, Settings, Step } from '@/lib/dive/dive';
import { FASTEST_M_MIN, legDurationS } from '@/lib/dive/script/leg-rate';

/** Any dive a script can say. */

const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => (Math.abs(value) < 1e-6 ? 0 : value));

const gas = fc.oneof(
  fc.constantFrom({ o2: 0.21, he: 0 }, { o2: 1, he: 0 }, { o2: 0.18, he: 0.45 }),
  fc
    .tuple(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 0, max: 1000 }))
    .map(([o2, he]) => ({ o2: o2 / 1000, he: Math.min(he, 1000 - o2) / 1000 })),
  fc.tuple(between(0.01, 1), between(0, 1)).map(([o2, share]) => ({ o2, he: tiny((1 - o2) * share) })),
);

function tiny(fraction: number): number {
  return fraction < 1e-6 ? 0 : fraction;
}

const altitudeM = fc.oneof(fc.integer({ min: -450, max: 6000 }), between(-450, 6000));
const wholeOrNot = (min: number, max: number) =>
  fc.oneof(fc.integer({ min: Math.ceil(min), max: Math.floor(max) }), between(min, max));
const tensions = fc.array(fc.oneof(fc.constant(0), between(0.001, 12)), { minLength: 16, maxLength: 16 });

const settings: fc.Arbitrary<Settings> = fc.record({
  water: fc.constantFrom('reference', 'fresh', 'salt'),
  altitudeM,
  start: fc.oneof(
    fc.record({ kind: fc.constant('adapted' as const), altitudeM }),
    fc.record({ kind: fc.constant('arrived' as const), fromM: altitudeM, agoS: wholeOrNot(0, 600_000) }),
    fc.record({ kind: fc.constant('tensions' as const), nitrogenBar: tensions, heliumBar: tensions }),
  ),
  model: fc.record({
    variant: fc.constantFrom('A', 'B', 'C'),
    first: fc.constantFrom('1', '1b'),
    respiratoryQuotient: fc.oneof(fc.constant(1), between(0.6, 1.2)),
  }),
  gradientFactors: fc
    .tuple(
      fc.oneof(
        fc.integer({ min: 1, max: 100 }).map((n) => n / 100),
        between(0.01, 1),
      ),
      fc.oneof(fc.constant(1), between(0.01, 1)),
    )
    .map(([one, other]) => ({ low: Math.min(one, other), high: Math.max(one, other) })),
  gas,
  carried: fc.uniqueArray(fc.record({ gas, fromM: wholeOrNot(0, DEEPEST_M) }), {
    maxLength: 3,
    comparator: (one, other) =>
      Math.abs(one.gas.o2 - other.gas.o2) < 1e-8 && Math.abs(one.gas.he - other.gas.he) < 1e-8,
  }),
  plan: fc.record({
    ascentMMin: wholeOrNot(1, 60),
    stopStepM: wholeOrNot(1, 10),
    lastStopM: wholeOrNot(1, 10),
    stopRoundingMin: fc.oneof(
      fc.integer({ min: 1, max: 300 }).map((seconds) => seconds / 60),
      fc.constantFrom(0.1, 0.5, 1, 2),
    ),
  }),
  setups: fc.constant([]),
});

type Move = { depthM: number; speed: number; byRate: boolean } | { stayS: number } | { gas: Settings['gas'] };

const move: fc.Arbitrary<Move> = fc.oneof(
  fc.record({ depthM: wholeOrNot(0.1, DEEPEST_M), speed: wholeOrNot(1, FASTEST_M_MIN), byRate: fc.boolean() }),
  fc.record({ stayS: wholeOrNot(0.5, 7200) }),
  fc.record({ gas }),
);

/** One dive: anything that ends at the surface. */
const descentAndBack = fc.array(move, { minLength: 2, maxLength: 8, size: 'max' }).map((moves): Step[] => {
  let fromM = 0;
  const goTo = (toM: number, rate: number, byRate: boolean): Step[] => {
    if (toM === fromM) return [];
    const exactS = legDurationS(fromM, toM, rate);
    const durationS = byRate ? exactS : Math.ceil(exactS);
    const kind = toM > fromM ? 'descend' : 'ascend';
    fromM = toM;
    return durationS >= SHORTEST_S ? [{ kind, toM, durationS }] : [{ kind, toM, durationS: 1 }];
  };
  const steps = moves.flatMap((one): Step[] => {
    if ('stayS' in one) return [{ kind: 'stay', durationS: one.stayS }];
    if ('gas' in one) return [{ kind: 'switch', gas: one.gas }];
    return goTo(one.depthM, one.speed, one.byRate);
  });
  return [...steps, ...goTo(0, 9, true)];
});

const steps = fc
  .array(fc.tuple(descentAndBack, wholeOrNot(1, 36_000)), { minLength: 1, maxLength: 3 })
  .map((dives) => dives.flatMap(([dive, durationS]): Step[] => [...dive, { kind: 'interval', durationS }]));

export const anyDive: fc.Arbitrary<Dive> = fc.record({ settings, steps, lines: fc.constant([]) });

const REMARKS = ['', '', '', '  # as planned', '# 30 m: “deep enough”', '\t#'];

/** A script in many hands: other words for the same, spaces, remarks, feet, Windows line ends. */
export const anyWrittenScript = (plain: string) =>
  fc
    .record({
      seed: fc.array(fc.nat({ max: 11 }), { minLength: 8, maxLength: 8 }),
      windows: fc.boolean(),
      capitals: fc.boolean(),
    })
    .map(({ seed, windows, capitals }) => {
      const lines = plain.split('\n').map((line, i) => {
        const pick = seed[i % seed.length]!;
        let words = line;
        if (pick % 3 === 1)
          words = words.replace('descend to', 'go down to').replace('ascend to', 'go up to').replace('stay', 'hold');
        if (pick % 4 === 1) words = words.replace(/^ascend to surface/, 'surface').replace(': ', ' = ');
        if (pick % 5 === 1) words = `  ${words.replace(/ /g, '  ')}`;
        if (words.trim() !== '' || pick % 2 === 0) words += REMARKS[pick % REMARKS.length]!;
        return capitals ? words.replace(/^[a-z]/, (letter) => letter.toUpperCase()) : words;
      });
      return lines.join(windows ? '\r\n' : '\n');
    });

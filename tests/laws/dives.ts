import fc from 'fast-check';
import { expect } from 'vitest';
import type * as z from 'zod';
import { DEEPEST_M, SHORTEST_S } from '@/lib/dive/bounds';
import { checker, type Checker } from '@/lib/dive/checker';
import { settingsSchema, type Dive, type Settings, type Step } from '@/lib/dive/dive';
import { FASTEST_M_MIN, legDurationS } from '@/lib/dive/script/leg-rate';
import { FIELDS } from '@/lib/dive/script/settings/fields';
import { anyOf } from './any-of-schema';

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

interface Entry {
  readonly name: string;
  readonly unless: string;
  readonly schema: (parts: Checker) => z.ZodType;
  read(text: string): { readonly ok: boolean; readonly value?: unknown };
  write(value: never): string;
}

/** What a script can say of a field, which may be a last digit aside of a number that was drawn. */
function sayable({ name, unless, read, write }: Entry, drawn: unknown): unknown {
  const text = drawn === undefined ? unless : write(drawn as never);
  // What a field that may be absent is taken as without it is not kept.
  if (text === unless) return read(unless).value;
  const { value } = read(text);
  expect(value, `${name}: ${JSON.stringify(drawn)} is written as ${text}`).toEqual(near(drawn));
  return value;
}

const near = (value: unknown): unknown =>
  typeof value === 'number'
    ? expect.closeTo(value, 8)
    : typeof value === 'object' && value !== null
      ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, near(one)]))
      : value;

/** Every field of a group of the table, each with whatever its schema allows. */
const fieldsOf = (group: Readonly<Record<string, Entry>>) =>
  fc.record(
    Object.fromEntries(
      Object.entries(group).map(([key, entry]) => [
        key,
        anyOf(entry.schema(checker)).map((drawn) => sayable(entry, drawn)),
      ]),
    ),
  );

const { model, plan, ...single } = FIELDS;

/** Settings made from the table of the script's settings: one that is added there is drawn here. */
const settings: fc.Arbitrary<Settings> = fc
  .record({
    single: fieldsOf(single),
    model: fieldsOf(model),
    plan: fieldsOf(plan),
    altitudeM,
    start: fc.oneof(
      fc.record({ kind: fc.constant('adapted' as const), altitudeM }),
      fc.record({ kind: fc.constant('arrived' as const), fromM: altitudeM, agoS: wholeOrNot(0, 600_000) }),
      fc.record({ kind: fc.constant('tensions' as const), nitrogenBar: tensions, heliumBar: tensions }),
    ),
    carried: fc.uniqueArray(fc.record({ gas, fromM: wholeOrNot(0, DEEPEST_M) }), {
      maxLength: 3,
      comparator: (one, other) =>
        Math.abs(one.gas.o2 - other.gas.o2) < 1e-8 && Math.abs(one.gas.he - other.gas.he) < 1e-8,
    }),
  })
  .map(({ single: drawn, ...rest }) => settingsSchema.parse({ ...drawn, ...rest, setups: [] }));

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

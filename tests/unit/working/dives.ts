import fc from 'fast-check';
import { figuresOf, type Figures } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, Settings, Step } from '@/lib/dive/dive';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';

export interface Worked {
  readonly timeline: Timeline;
  readonly figures: Figures;
}

export const SETTINGS: Settings = defaultSettings();

export const TRIMIX = { o2: 0.18, he: 0.45 };

/** A dive by settings and steps, worked out every 10 s. */
export function workedDive(steps: readonly Step[], settings: Partial<Settings> = {}, everyS = 10): Worked {
  const dive: Dive = { settings: { ...SETTINGS, ...settings }, steps: [...steps], lines: [] };
  const timeline = computeTimeline(dive, everyS);
  return { timeline, figures: figuresOf(timeline, dive.settings) };
}

/** Down at 20 m/min and a stay. */
export function downFor(toM: number, minutes: number): Step[] {
  return [
    { kind: 'descend', toM, durationS: toM * 3 },
    { kind: 'stay', durationS: minutes * 60 },
  ];
}

const gas = fc.constantFrom(
  AIR,
  { o2: 0.32, he: 0 },
  { o2: 0.5, he: 0 },
  { o2: 1, he: 0 },
  TRIMIX,
  { o2: 0.1, he: 0.7 },
  { o2: 0.21, he: 0.79 },
);
const altitudeM = fc.oneof(
  { weight: 2, arbitrary: fc.constant(0) },
  { weight: 1, arbitrary: fc.integer({ min: -400, max: 4500 }) },
);
const tensions = (most: number) =>
  fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0.001, max: most, noNaN: true })), {
    minLength: 16,
    maxLength: 16,
  });

const gradientFactors = fc.oneof(
  fc.constantFrom({ low: 0.85, high: 0.85 }, { low: 1, high: 1 }, { low: 0.3, high: 0.85 }, { low: 0.5, high: 0.7 }),
  fc
    .tuple(fc.integer({ min: 10, max: 100 }), fc.integer({ min: 10, max: 100 }))
    .map(([one, other]) => ({ low: Math.min(one, other) / 100, high: Math.max(one, other) / 100 })),
);

const settings: fc.Arbitrary<Settings> = fc
  .record({
    water: fc.constantFrom('reference' as const, 'fresh' as const, 'salt' as const),
    altitudeM,
    start: fc.oneof(
      fc.record({ kind: fc.constant('adapted' as const), altitudeM }),
      fc.record({
        kind: fc.constant('arrived' as const),
        fromM: altitudeM,
        agoS: fc.integer({ min: 0, max: 200_000 }),
      }),
      fc.record({
        kind: fc.constant('tensions' as const),
        nitrogenBar: tensions(3),
        heliumBar: fc.oneof(fc.constant(Array<number>(16).fill(0)), tensions(1)),
      }),
    ),
    model: fc.record({
      variant: fc.constantFrom('A' as const, 'B' as const, 'C' as const),
      first: fc.constantFrom('1' as const, '1b' as const),
      respiratoryQuotient: fc.constantFrom(1, 1, 0.8, 0.9),
    }),
    gradientFactors,
    gas,
    carried: fc.array(fc.record({ gas, fromM: fc.integer({ min: 3, max: 40 }) }), { maxLength: 2 }),
    plan: fc.record({
      ascentMMin: fc.integer({ min: 3, max: 30 }),
      stopStepM: fc.constantFrom(3, 3, 2, 5),
      lastStopM: fc.constantFrom(3, 3, 6, 4.5),
      stopRoundingMin: fc.constantFrom(1, 1, 0.5, 1 / 3, 2),
    }),
  })
  .map((drawn) => ({ ...SETTINGS, ...drawn }));

type Move =
  | { readonly toM: number; readonly rate: number }
  | { readonly stayS: number }
  | { readonly gas: Settings['gas'] }
  | { readonly intervalS: number };

const move: fc.Arbitrary<Move> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ toM: fc.integer({ min: 0, max: 90 }), rate: fc.integer({ min: 3, max: 40 }) }) },
  { weight: 4, arbitrary: fc.record({ stayS: fc.integer({ min: 5, max: 4000 }) }) },
  { weight: 1, arbitrary: fc.record({ gas }) },
  { weight: 1, arbitrary: fc.record({ intervalS: fc.integer({ min: 60, max: 20_000 }) }) },
);

const steps = fc.array(move, { maxLength: 18 }).map((moves): Step[] => {
  let depthM = 0;
  return moves.flatMap((one): Step[] => {
    if ('stayS' in one) return [{ kind: 'stay', durationS: one.stayS }];
    if ('gas' in one) return [{ kind: 'switch', gas: one.gas }];
    if ('intervalS' in one) return depthM === 0 ? [{ kind: 'interval', durationS: one.intervalS }] : [];
    if (one.toM === depthM) return [];
    const kind = one.toM > depthM ? 'descend' : 'ascend';
    const durationS = (Math.abs(one.toM - depthM) / one.rate) * 60;
    depthM = one.toM;
    return [{ kind, toM: one.toM, durationS }];
  });
});

/** Dives of many kinds: waters, altitudes, starts, both gradient-factor cases, helium, switches, intervals. */
const anyDive: fc.Arbitrary<Dive> = fc.record({ settings, steps, lines: fc.constant([]) });

/** The same, at one of its samples, anywhere from the start to the end. */
export const anyInstant = fc
  .record({ dive: anyDive, part: fc.double({ min: 0, max: 1, noNaN: true }) })
  .map(({ dive, part }) => {
    const timeline = computeTimeline(dive, 60);
    return { timeline, figures: figuresOf(timeline, dive.settings), sample: Math.round(part * (timeline.length - 1)) };
  });

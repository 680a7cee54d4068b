import fc from 'fast-check';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, Settings, Step } from '@/lib/dive/dive';
import type { Gas } from '@/lib/physics/gas';

/*
 * Days of diving as people might spend them, made without a script: the depths, times, gases and limits that the engine's
 * laws are put to. `dives.ts` has every dive a script can say, likely or not.
 */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const AIR: Gas = { o2: 0.21, he: 0 };
const NITROGEN_MIXES: Gas[] = [AIR, { o2: 0.32, he: 0 }, { o2: 0.5, he: 0 }, { o2: 1, he: 0 }];
const HELIUM_MIXES: Gas[] = [
  { o2: 0.18, he: 0.45 },
  { o2: 0.21, he: 0.35 },
  { o2: 0.1, he: 0.7 },
  { o2: 0.16, he: 0.84 },
];

type Move = { toM: number; mMin: number; stayS: number; gas: Gas | undefined };

const anyMove = (gases: Gas[]): fc.Arbitrary<Move> =>
  fc.record({
    toM: fc.oneof(fc.constantFrom(3, 5, 6, 12, 18, 30, 40), between(1, 80)),
    mMin: between(2, 40),
    stayS: fc.oneof(fc.constantFrom(60, 180, 600, 1200), between(1, 3600)),
    gas: fc.option(fc.constantFrom(...gases), { nil: undefined, freq: 2 }),
  });

const anyLimits: fc.Arbitrary<Settings['gradientFactors']> = fc
  .tuple(between(0.1, 1), between(0.4, 1), fc.boolean())
  .map(([one, other, same]) =>
    same ? { low: other, high: other } : { low: Math.min(one, other), high: Math.max(one, other) },
  );

const anyAltitudeM = fc.oneof(fc.constantFrom(0, 0, 700, 2400), between(0, 4000));

/** Settings with defaults for what the engine's laws do not turn on. */
const anySettings = (gases: Gas[], carried: Settings['carried']): fc.Arbitrary<Settings> =>
  fc
    .record({
      water: fc.constantFrom('reference' as const, 'fresh' as const, 'salt' as const),
      altitudeM: anyAltitudeM,
      start: fc.oneof(
        fc.record({ kind: fc.constant('adapted' as const), altitudeM: anyAltitudeM }),
        fc.record({ kind: fc.constant('arrived' as const), fromM: anyAltitudeM, agoS: between(0, 90_000) }),
      ),
      variant: fc.constantFrom('A' as const, 'B' as const, 'C' as const),
      first: fc.constantFrom('1' as const, '1b' as const),
      respiratoryQuotient: fc.constantFrom(1, 1, 0.9, 0.8),
      gradientFactors: anyLimits,
      gas: fc.constantFrom(...gases),
      carried: fc.subarray([...carried]),
      ascentMMin: fc.constantFrom(3, 9, 10, 18),
      stops: fc.constantFrom(
        { stopStepM: 3, lastStopM: 3 },
        { stopStepM: 3, lastStopM: 6 },
        { stopStepM: 3.048, lastStopM: 6.096 },
        { stopStepM: 2, lastStopM: 5 },
      ),
      stopRoundingMin: fc.constantFrom(1, 1, 0.5, 1 / 60),
    })
    .map(({ variant, first, respiratoryQuotient, ascentMMin, stops, stopRoundingMin, ...rest }) => ({
      ...defaultSettings(),
      ...rest,
      model: { variant, first, respiratoryQuotient },
      plan: { ascentMMin, ...stops, stopRoundingMin },
    }));

/** A dive through some depths, which ends where its last move does. */
function stepsThrough(moves: readonly Move[], fromM = 0): Step[] {
  let depthM = fromM;
  return moves.flatMap(({ toM, mMin, stayS, gas }): Step[] => {
    const change: Step[] =
      toM === depthM
        ? []
        : [{ kind: toM > depthM ? 'descend' : 'ascend', toM, durationS: (Math.abs(toM - depthM) * 60) / mMin }];
    depthM = toM;
    return [...(gas ? [{ kind: 'switch' as const, gas }] : []), ...change, { kind: 'stay', durationS: stayS }];
  });
}

const surfacing = (moves: readonly Move[]): Step => ({
  kind: 'ascend',
  toM: 0,
  durationS: (moves.at(-1)!.toM * 60) / 9,
});

const day = (gases: Gas[], carried: Settings['carried']): fc.Arbitrary<Dive> =>
  fc
    .record({
      settings: anySettings(gases, carried),
      before: fc.array(
        fc.record({ moves: fc.array(anyMove(gases), { minLength: 1, maxLength: 3 }), intervalS: between(60, 20_000) }),
        { maxLength: 2 },
      ),
      last: fc.array(anyMove(gases), { minLength: 1, maxLength: 4 }),
      surfaces: fc.boolean(),
    })
    .map(({ settings, before, last, surfaces }) => ({
      settings,
      lines: [],
      steps: [
        ...before.flatMap(({ moves, intervalS }): Step[] => [
          ...stepsThrough(moves),
          surfacing(moves),
          { kind: 'interval', durationS: intervalS },
        ]),
        ...stepsThrough(last),
        ...(surfaces ? [surfacing(last), { kind: 'interval' as const, durationS: 3600 }] : []),
      ],
    }));

/** A day on air and nitrox: up to three dives, of which the last may end under water. */
export const nitrogenDay: fc.Arbitrary<Dive> = day(NITROGEN_MIXES, [{ gas: { o2: 0.5, he: 0 }, fromM: 21 }]);

/** The same with helium about, and with gases carried for the way up. */
export const heliumDay: fc.Arbitrary<Dive> = day(
  [...HELIUM_MIXES, AIR, { o2: 0.5, he: 0 }],
  [
    { gas: { o2: 0.5, he: 0 }, fromM: 21 },
    { gas: { o2: 0.35, he: 0.25 }, fromM: 40 },
    { gas: { o2: 1, he: 0 }, fromM: 6 },
  ],
).filter(
  ({ settings, steps }) => settings.gas.he > 0 || steps.some((step) => step.kind === 'switch' && step.gas.he > 0),
);

export const anyDay: fc.Arbitrary<Dive> = fc.oneof(nitrogenDay, heliumDay);

/** A dive that has just spent its time at depth: what an ascent is planned from. */
export const bottomPhase: fc.Arbitrary<Dive> = fc
  .tuple(anyDay, between(12, 75), between(2, 45))
  .map(([{ settings }, depthM, bottomMin]) => ({
    settings,
    lines: [],
    steps: [
      { kind: 'descend', toM: depthM, durationS: (depthM * 60) / 18 },
      { kind: 'stay', durationS: bottomMin * 60 },
    ],
  }));

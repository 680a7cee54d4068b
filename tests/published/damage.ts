import { ENGINE, type Engine } from '@/lib/evidence/engine';
import type { Dive, Settings, Step } from '@/lib/dive/dive';
import type { Compartments, FirstCompartment } from '@/lib/tissue/coefficients';

/** An engine with one thing wrong. */
const damaged = (change: Partial<Engine>): Engine => ({ ...ENGINE, ...change });

type Column = Exclude<keyof Compartments, 'nitrogenK' | 'heliumK'>;

/** An engine with one coefficient of one compartment out by some amount, in every variant. */
export function withCoefficient(column: Column, index: number, by: number, first: FirstCompartment = '1b'): Engine {
  return damaged({
    compartments: (variant, asked) => {
      const right = ENGINE.compartments(variant, asked);
      if (asked !== first) return right;
      const wrong = Float64Array.from(right[column]);
      wrong[index]! += by;
      return { ...right, [column]: wrong };
    },
  });
}

/** An engine that computes another dive than the one it was asked for. */
const ofAnotherDive = (other: (dive: Dive) => Dive): Engine =>
  damaged({ computeTimeline: (dive, everyS) => ENGINE.computeTimeline(other(dive), everyS) });

const withSettings = (change: (settings: Settings) => Partial<Settings>): Engine =>
  ofAnotherDive((dive) => ({ ...dive, settings: { ...dive.settings, ...change(dive.settings) } }));

const stayingLonger = (step: Step): Step => (step.kind === 'stay' ? { ...step, durationS: step.durationS * 15 } : step);

interface Damage {
  readonly name: string;
  readonly engine: Engine;
}

/** Engines wrong in one of the ways an engine is apt to go wrong. */
export const FORMULA_DAMAGES: readonly Damage[] = [
  {
    name: 'compartments 1 and 1b swapped',
    engine: damaged({ compartments: (v, f) => ENGINE.compartments(v, f === '1' ? '1b' : '1') }),
  },
  {
    name: 'variants B and C swapped',
    engine: damaged({ compartments: (v, f) => ENGINE.compartments(v === 'B' ? 'C' : v === 'C' ? 'B' : v, f) }),
  },
  { name: 'variant A for all', engine: damaged({ compartments: (_, f) => ENGINE.compartments('A', f) }) },
  { name: 'limits a tenth too high', engine: damaged({ mValueBar: (a, b, p) => 1.1 * ENGINE.mValueBar(a, b, p) }) },
  { name: 'limits multiplied by b', engine: damaged({ mValueBar: (a, b, p) => a + p * b }) },
  {
    name: 'gradient factor forgotten in the limit',
    engine: damaged({ limitBar: (a, b, _, p) => ENGINE.limitBar(a, b, 1, p) * 1.00001 }),
  },
  {
    name: 'gradient factor forgotten in the tolerated pressure',
    engine: damaged({ toleratedAmbientBar: (P, a, b) => ENGINE.toleratedAmbientBar(P, a, b, 1) * 1.00001 }),
  },
  {
    name: 'gases averaged evenly',
    engine: damaged({
      coefficientsOf: ({ compartments: c }, i) => ({
        a: (c.nitrogenA[i]! + c.heliumA[i]!) / 2,
        b: (c.nitrogenB[i]! + c.heliumB[i]!) / 2,
      }),
    }),
  },
  {
    name: 'water vapour forgotten',
    engine: damaged({ waterVapourBar: 0, lungOffsetBar: () => 0, alveolarInertBar: (p, f) => p * f }),
  },
  {
    name: 'half-times taken for time constants',
    engine: damaged({
      haldane: (a, b, k, t) => ENGINE.haldane(a, b, k / Math.LN2, t),
      schreiner: (a, b, r, k, t) => ENGINE.schreiner(a, b, r, k / Math.LN2, t),
    }),
  },
  {
    name: 'a change of depth taken for its end',
    engine: damaged({ schreiner: (a, b, r, k, t) => ENGINE.haldane(a, b + r * t, k, t) }),
  },
  {
    name: 'atmosphere a millibar too heavy',
    engine: damaged({ atmosphereBar: (h) => ENGINE.atmosphereBar(h) + 0.001 }),
  },
  {
    name: 'metres of altitude taken for feet',
    engine: damaged({ atmosphereBar: (h) => ENGINE.atmosphereBar(h * 0.3048) }),
  },
  { name: 'gravity rounded to 9.8', engine: damaged({ standardGravity: 9.8 }) },
  {
    name: 'water one percent too heavy',
    engine: damaged({ barPerMetre: (water) => 1.01 * ENGINE.barPerMetre(water) }),
  },
  {
    name: 'water five percent too heavy',
    engine: damaged({ barPerMetre: (water) => 1.05 * ENGINE.barPerMetre(water) }),
  },
  {
    name: 'depths counted from a vacuum',
    engine: damaged({
      gasModM: (gas, limit, site) => ENGINE.gasModM(gas, limit, { ...site, surfaceBar: 0 }),
      hypoxicAboveM: (gas, site, least) => ENGINE.hypoxicAboveM(gas, { ...site, surfaceBar: 0 }, least),
      equivalentAirDepthM: (gas, depth, site) => ENGINE.equivalentAirDepthM(gas, depth, { ...site, surfaceBar: 0 }),
      bestMix: (depth, wish, site) => ENGINE.bestMix(depth, wish, { ...site, surfaceBar: 0 }),
    }),
  },
  {
    name: 'air taken for 80% nitrogen',
    engine: damaged({
      equivalentAirDepthM: (gas, depth, site) => ENGINE.equivalentAirDepthM({ ...gas, o2: gas.o2 + 0.01 }, depth, site),
      equivalentNarcoticDepthM: (gas, depth, narcotic, site) =>
        ENGINE.equivalentNarcoticDepthM({ o2: gas.o2 + 0.01, he: gas.he + 0.01 }, depth, narcotic, site),
    }),
  },
  {
    name: 'density at 15 °C whatever was asked',
    engine: damaged({ gasDensityGL: (gas, bar) => ENGINE.gasDensityGL(gas, bar, 15) }),
  },
  ...[1.01325, 1 / 1.01325].map((factor) => ({
    name: `atmospheres and bar mistaken for each other (${factor.toFixed(3)})`,
    engine: damaged({
      singleLimitMin: (bar) => ENGINE.singleLimitMin(bar * factor),
      dailyLimitMin: (bar) => ENGINE.dailyLimitMin(bar * factor),
      pulmonaryRate: (exponent) => ({
        ...ENGINE.pulmonaryRate(exponent),
        at: (bar) => ENGINE.pulmonaryRate(exponent).at(bar * factor),
      }),
    }),
  })),
  { name: 'every cylinder gas ideal', engine: damaged({ compressibility: () => 1 }) },
  {
    name: 'cylinder pressures halved',
    engine: damaged({ compressibility: (gas, bar, kelvin) => ENGINE.compressibility(gas, bar / 2, kelvin) }),
  },
  { name: 'no-stop times halved', engine: damaged({ noStop: (...all) => halved(ENGINE.noStop(...all)) }) },
  { name: 'no-stop times doubled', engine: damaged({ noStop: (...all) => doubled(ENGINE.noStop(...all)) }) },
  { name: 'no-stop times the same at every depth', engine: damaged({ noStop: () => ({ minutes: 20, leader: 1 }) }) },
];

/** Engines that go wrong over a whole dive. */
export const DIVE_DAMAGES: readonly Damage[] = [
  {
    name: 'limits of 40/40 whatever was asked',
    engine: damaged({
      figuresOf: (timeline, limits) =>
        ENGINE.figuresOf(timeline, { ...limits, gradientFactors: { low: 0.4, high: 0.4 } }),
    }),
  },
  {
    name: 'the lungs of another respiratory quotient',
    engine: withSettings(({ model }) => ({ model: { ...model, respiratoryQuotient: 0.9 } })),
  },
  { name: 'fresh water for reference water', engine: withSettings(() => ({ water: 'fresh' })) },
  {
    name: 'stays fifteen times as long',
    engine: ofAnotherDive((dive) => ({ ...dive, steps: dive.steps.map(stayingLonger) })),
  },
];

const halved = (was: { minutes: number; leader: number }) => ({ ...was, minutes: was.minutes / 2 });
const doubled = (was: { minutes: number; leader: number }) => ({ ...was, minutes: was.minutes * 2 });

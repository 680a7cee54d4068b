import { leftBy, curveSite, rested } from '@/lib/curves/curve-site';
import type { NoStopConditions } from '@/lib/curves/no-stop-curve';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, GradientFactors, Settings, Step } from '@/lib/dive/dive';
import { gasName, type Gas } from '@/lib/physics/gas';
import { printAltitude } from '@/lib/quantity/altitude';
import { sayDepth } from '@/lib/quantity/depth';
import { printHours, writeTime } from '@/lib/quantity/duration';
import { printFactors } from '@/lib/quantity/percent';
import type { UnitSystem } from '@/lib/quantity/unit-system';

/** A dive before, on the same gas: down at 18 m/min, straight up at 9 m/min, then time at the surface on air. */
export interface BeforeDive {
  readonly depthM: number;
  readonly stayS: number;
  readonly surfaceS: number;
}

/** One no-stop curve that is asked for. */
export interface CurveWish {
  readonly gas: Gas;
  readonly gradientFactors: GradientFactors;
  readonly altitudeM: number;
  /** Lives at the altitude, or has just come up from the sea. */
  readonly arrival: 'settled' | 'just arrived';
  readonly before: BeforeDive | undefined;
}

export const DOWN_M_MIN = 18;
export const UP_M_MIN = 9;

function wishSettings({ gas, gradientFactors, altitudeM, arrival }: CurveWish): Settings {
  const start =
    arrival === 'settled' ? { kind: 'adapted' as const, altitudeM } : { kind: 'arrived' as const, fromM: 0, agoS: 0 };
  return { ...defaultSettings(), gas, gradientFactors, altitudeM, start };
}

function stepsBefore(before: BeforeDive | undefined): Step[] {
  if (!before) return [];
  const { depthM, stayS, surfaceS } = before;
  return [
    { kind: 'descend', toM: depthM, durationS: (depthM / DOWN_M_MIN) * 60 },
    { kind: 'stay', durationS: stayS },
    { kind: 'ascend', toM: 0, durationS: (depthM / UP_M_MIN) * 60 },
    ...(surfaceS > 0 ? [{ kind: 'interval' as const, durationS: surfaceS }] : []),
  ];
}

/** What the engine's curve needs; with a rate, the way down counts. */
export function wishConditions(wish: CurveWish, descentMMin?: number): NoStopConditions {
  const settings = wishSettings(wish);
  const steps = stepsBefore(wish.before);
  const tissues = steps.length > 0 ? leftBy({ settings, steps, lines: [] }, 0) : rested(settings);
  return { site: curveSite(settings), tissues, gas: wish.gas, gf: wish.gradientFactors.high, descentMMin };
}

/** A rested diver set down at a depth at once. */
export function setDownAt(toM: number, settings: Settings): Dive {
  return { settings, steps: [{ kind: 'descend', toM, durationS: 0 }], lines: [] };
}

/** The dive that has just arrived at a depth, for its working: at once, or at a rate. */
export function arrivalAt(wish: CurveWish, depthM: number, descentMMin?: number): Dive {
  const durationS = descentMMin === undefined ? 0 : (depthM / descentMMin) * 60;
  return {
    settings: wishSettings(wish),
    steps: [...stepsBefore(wish.before), { kind: 'descend', toM: depthM, durationS }],
    lines: [],
  };
}

/** A curve in as few words as tell it from the others. */
export function sayWishShortly(wish: CurveWish, all: readonly CurveWish[], units: UnitSystem): string {
  const { low, high } = wish.gradientFactors;
  const pair = printFactors({ low, high });
  const alike = all.every(({ gradientFactors }) => printFactors(gradientFactors) === pair);
  return [
    gasName(wish.gas),
    !alike && pair,
    wish.altitudeM !== 0 && printAltitude(wish.altitudeM, units),
    wish.before && 'after a dive',
  ]
    .filter(Boolean)
    .join(', ');
}

/** A curve in a few words: what is usual is left out. */
export function sayWish({ gas, gradientFactors, altitudeM, arrival, before }: CurveWish, units: UnitSystem): string {
  const { low, high } = gradientFactors;
  return [
    `${gasName(gas)}, ${printFactors({ low, high })}`,
    altitudeM !== 0 && `${printAltitude(altitudeM, units)}${arrival === 'settled' ? '' : ', just arrived'}`,
    before &&
      `after ${sayDepth(before.depthM, units)} for ${writeTime(before.stayS)}, ${before.surfaceS > 0 ? `${printHours(before.surfaceS)} ago` : 'just now'}`,
  ]
    .filter(Boolean)
    .join(', ');
}

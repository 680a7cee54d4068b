import { METRES_PER_FOOT } from '@/lib/quantity/length';
import { printRate } from '@/lib/quantity/rate';
import type { UnitSystem } from '@/lib/quantity/unit-system';

/** Fastest the lever takes the diver up or down, m/min. */
const FULL_M_MIN = 40;
/** Gentle near the middle, where a hand wants to be exact. */
const BEND = 1.6;
/** Nearer to the middle than this share, the diver is level. */
const LEVEL_WITHIN = 0.06;

/** Speed for a place of the lever from −1, up, to 1, down; m/min, downward positive. */
export function leverRateMMin(place: number): number {
  if (Math.abs(place) < LEVEL_WITHIN) return 0;
  return Math.sign(place) * Math.min(1, Math.abs(place)) ** BEND * FULL_M_MIN;
}

/** The place of the lever for a speed: the other way round. */
export function leverPlace(rateMMin: number): number {
  return Math.sign(rateMMin) * (Math.abs(rateMMin) / FULL_M_MIN) ** (1 / BEND);
}

/** Speeds that a tap sets, one way, slowest first: round figures in the reader's own units. */
const NOTCHES: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [3, 9, 18, 30],
  imperial: [10, 30, 60, 100].map((feet) => feet * METRES_PER_FOOT),
};

/** Every speed that a tap sets, from fastest up to fastest down, m/min; level is in the middle. */
export function notchesMMin(system: UnitSystem): readonly number[] {
  const oneWay = NOTCHES[system];
  return [...oneWay.map((rate) => -rate).reverse(), 0, ...oneWay];
}

/** The notch a tap at a place of the lever means, m/min. */
export function notchAt(place: number, system: UnitSystem): number {
  const apart = (notch: number) => Math.abs(leverPlace(notch) - place);
  return notchesMMin(system).reduce((near, notch) => (apart(notch) < apart(near) ? notch : near));
}

/** The next notch from a speed, upward (−1) or downward (1), m/min; the last stays. */
export function nextNotch(rateMMin: number, way: -1 | 1, system: UnitSystem): number {
  const notches = notchesMMin(system);
  const slack = 0.01;
  const next =
    way < 0 ? notches.findLast((notch) => notch < rateMMin - slack) : notches.find((notch) => notch > rateMMin + slack);
  return next ?? (way < 0 ? notches[0]! : notches.at(-1)!);
}

/** A speed in words: which way, and how fast. */
export function sayRate(rateMMin: number, system: UnitSystem): { readonly way: string; readonly speed: string } {
  if (Math.abs(rateMMin) < 0.05) return { way: 'level', speed: printRate(0, system) };
  return { way: rateMMin < 0 ? 'up' : 'down', speed: printRate(Math.abs(rateMMin), system) };
}

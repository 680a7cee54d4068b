import type { Settings } from '../dive/dive';
import type { Leg } from '../dive/legs';
import type { Timeline } from '../dive/timeline';
import { ambientBarAt, type Site } from './gas-depths';
import { absoluteOfGauge, IDEAL_GAS, type GasLaw, type Vessel } from './gas-law';

/** What a diver is taken to breathe at the surface where nothing is said, L/min. Common practice, no source. */
const USUAL_CONSUMPTION_L_MIN = 20;
/** How many times faster a frightened diver is taken to breathe where nothing is said. Common practice, no source. */
const USUAL_STRESS_FACTOR = 2;

/** Part of a dive with a breathing rate of its own. A stay is a stop once the diver has come up from the deepest point. */
export type Phase = 'descent' | 'bottom' | 'ascent' | 'stops';

/**
 * Litres a minute by phase, at the surface's pressure of 1 bar. A diver moves the same volume at every depth, so the gas
 * used in a minute is the rate times the ambient pressure in bar.
 */
export type BreathingRates = Readonly<Record<Phase, number>>;

/**
 * What is breathed in each phase of a dive, L/min at the surface; a phase that is not stated goes as the bottom does.
 */
export function breathingRatesOf({ supply }: Pick<Settings, 'supply'>): BreathingRates {
  const { bottomLMin = USUAL_CONSUMPTION_L_MIN, descentLMin, ascentLMin, stopsLMin } = supply?.consumption ?? {};
  return {
    descent: descentLMin ?? bottomLMin,
    bottom: bottomLMin,
    ascent: ascentLMin ?? bottomLMin,
    stops: stopsLMin ?? bottomLMin,
  };
}

/** How many times faster a frightened diver breathes: as the script says, or the usual factor. */
export function stressFactorOf({ supply }: Pick<Settings, 'supply'>): number {
  return supply?.stressFactor ?? USUAL_STRESS_FACTOR;
}

/** The phase of every leg, by index. Time at the surface between dives counts as bottom and uses nothing. */
export function phasesOf(legs: readonly Leg[]): Phase[] {
  const deepest: number[] = [];
  for (const { diveNumber, fromM, toM } of legs) deepest[diveNumber] = Math.max(deepest[diveNumber] ?? 0, fromM, toM);
  const reached = new Set<number>();
  return legs.map(({ diveNumber, fromM, toM }) => {
    if (toM === deepest[diveNumber]) reached.add(diveNumber);
    if (toM !== fromM) return toM > fromM ? 'descent' : 'ascent';
    return reached.has(diveNumber) && toM < deepest[diveNumber]! ? 'stops' : 'bottom';
  });
}

/** Gas breathed in some minutes between two ambient pressures, litres at 1 bar; exact where the depth changes evenly. */
export function gasBreathedL(rateLMin: number, fromBar: number, toBar: number, minutes: number): number {
  return (rateLMin * (fromBar + toBar) * minutes) / 2;
}

/**
 * The surface consumption rate of a logged dive, L/min: the gas that left the cylinder, over the sum of ambient pressure
 * times minutes under water. Pressures as the gauge showed them, bar; `dive` picks one dive of a timeline, from 0.
 * NaN where the dive takes no time.
 */
export function loggedConsumptionLMin(
  vessel: Vessel,
  gauge: { readonly startBar: number; readonly endBar: number },
  timeline: Site & Pick<Timeline, 'legs'>,
  { dive = 0, law = IDEAL_GAS }: { readonly dive?: number; readonly law?: GasLaw } = {},
): number {
  const content = (bar: number) => law.contentL(vessel, absoluteOfGauge(bar));
  const barMinutes = timeline.legs
    .filter(({ diveNumber, interval }) => diveNumber === dive && !interval)
    .reduce((sum, { fromM, toM, startS, endS }) => {
      return sum + gasBreathedL(1, ambientBarAt(fromM, timeline), ambientBarAt(toM, timeline), (endS - startS) / 60);
    }, 0);
  return (content(gauge.startBar) - content(gauge.endBar)) / barMinutes;
}

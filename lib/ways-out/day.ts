import type { Dive } from '../dive/dive';
import { legsOf, type Leg } from '../dive/legs';
import { parseScript } from '../dive/script';
import type { UnitSystem } from '../quantity/unit-system';

/** One dive of a script, step by step. Steps are counted from 0 as in the script. */
export interface DiveSteps {
  /** Which dive of the day, from 0. */
  readonly number: number;
  readonly legs: readonly Leg[];
  readonly maxDepthM: number;
  /** The leg with which the bottom ends: the last that does not climb and ends in the deeper half of the dive. */
  readonly lastOfBottom: Leg;
  /** The interval before it, where there is one. */
  readonly intervalBefore: Leg | undefined;
}

/** A script and the dives it makes. */
export interface Day {
  readonly script: string;
  readonly dive: Dive;
  readonly dives: readonly DiveSteps[];
  /** The units in which changes are sensible steps. */
  readonly system: UnitSystem;
}

/** A level or a stop is told apart by this share of the greatest depth: the deeper half is where a dive goes for. */
const DEEPER_HALF = 0.5;

/** Reads a script; undefined where it makes no sense. */
export function dayOf(script: string, system: UnitSystem): Day | undefined {
  const parsed = parseScript(script);
  if (!parsed.ok) return undefined;
  const { legs } = legsOf(parsed.dive);
  const last = legs.at(-1)?.diveNumber ?? -1;
  const dives: DiveSteps[] = [];
  for (let number = 0; number <= last; number += 1) {
    const own = legs.filter((leg) => leg.diveNumber === number && !leg.interval);
    const maxDepthM = own.reduce((deepest, { toM }) => Math.max(deepest, toM), 0);
    const lastOfBottom = own.findLast(({ fromM, toM }) => toM >= fromM && toM > 0 && toM >= maxDepthM * DEEPER_HALF);
    if (!lastOfBottom) continue;
    dives.push({
      number,
      legs: own,
      maxDepthM,
      lastOfBottom,
      intervalBefore: legs.findLast((leg) => leg.interval && leg.diveNumber === number - 1),
    });
  }
  return { script, dive: parsed.dive, dives, system };
}

/** The legs of a dive until it leaves the bottom. */
export function bottomOf({ legs, lastOfBottom }: DiveSteps): readonly Leg[] {
  return legs.filter(({ startS }) => startS <= lastOfBottom.startS);
}

/** Its climbs after that. */
export function wayUpOf({ legs, lastOfBottom }: DiveSteps): readonly Leg[] {
  return legs.filter(({ startS, fromM, toM }) => startS >= lastOfBottom.endS && toM < fromM);
}

/** Waits at one depth in the deeper half, before leaving the bottom. */
export function levelsOf(dive: DiveSteps): readonly Leg[] {
  return bottomOf(dive).filter(({ fromM, toM }) => fromM === toM && toM >= dive.maxDepthM * DEEPER_HALF);
}

/** How long a leg lasts, min. */
export function minutesOf({ startS, endS }: Pick<Leg, 'startS' | 'endS'>): number {
  return (endS - startS) / 60;
}

import type { Leg } from '../../dive/legs';
import type { Timeline } from '../../dive/timeline';
import { BAR_PER_MMHG } from '../../quantity/pressure';

/** What a breath held through one climb would do. It needs no dissolved gas at all. */
export interface HeldBreath {
  readonly startS: number;
  readonly endS: number;
  readonly fromM: number;
  readonly toM: number;
  /** How many times its volume at the start the gas would take at the end, could it stretch freely. */
  readonly ratio: number;
  /** How far the gas would be above the water's pressure if it could not stretch at all, bar. */
  readonly excessBar: number;
}

/** Boyle's law: what a held gas grows to between two ambient pressures, bar, as a multiple of its volume. */
export function heldBreathRatio(fromBar: number, toBar: number): number {
  return fromBar / toBar;
}

/** Every climb of the dive as if the breath had been held all the way. Legs that go on upward are one climb. */
export function heldBreaths(timeline: Pick<Timeline, 'legs' | 'surfaceBar' | 'barPerMetre'>): HeldBreath[] {
  const climbs: { startS: number; endS: number; fromM: number; toM: number }[] = [];
  let before: Leg | undefined;
  for (const leg of timeline.legs) {
    if (leg.toM < leg.fromM) {
      const climb = climbs.at(-1);
      if (climb && before && before.toM < before.fromM) Object.assign(climb, { endS: leg.endS, toM: leg.toM });
      else climbs.push({ startS: leg.startS, endS: leg.endS, fromM: leg.fromM, toM: leg.toM });
    }
    before = leg;
  }
  const barAt = (depthM: number) => timeline.surfaceBar + depthM * timeline.barPerMetre;
  return climbs.map((climb) => ({
    ...climb,
    ratio: heldBreathRatio(barAt(climb.fromM), barAt(climb.toM)),
    excessBar: barAt(climb.fromM) - barAt(climb.toM),
  }));
}

/** One metre of a climb: the ratio from its lower end to its upper. */
export interface MetreOfClimb {
  readonly fromM: number;
  readonly toM: number;
  readonly ratio: number;
}

/** A climb metre by metre, deepest first: the ratio grows all the way, and the last metre is the worst. */
export function metreByMetre(
  { fromM, toM }: Pick<HeldBreath, 'fromM' | 'toM'>,
  site: Pick<Timeline, 'surfaceBar' | 'barPerMetre'>,
): MetreOfClimb[] {
  const metres: MetreOfClimb[] = [];
  const barAt = (depthM: number) => site.surfaceBar + depthM * site.barPerMetre;
  for (let below = fromM; below > toM;) {
    const above = Math.max(toM, Math.ceil(below) - 1);
    metres.push({ fromM: below, toM: above, ratio: heldBreathRatio(barAt(below), barAt(above)) });
    below = above;
  }
  return metres;
}

/** A pressure the way physiology books print it. */
export function mmHgOf(bar: number): number {
  return bar / BAR_PER_MMHG;
}

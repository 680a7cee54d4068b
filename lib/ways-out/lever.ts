import { METRES_PER_FOOT } from '../quantity/length';
import type { UnitSystem } from '../quantity/unit-system';
import type { RuleSettings } from '../rules/all';
import type { Day, DiveSteps } from './day';
import type { Target, Trouble } from './trouble';
import { DUST, stepsTo } from '../quantity/rounding';

/** One dive of a day with something that is to be avoided. */
export interface Asked {
  readonly day: Day;
  readonly dive: DiveSteps;
  readonly target: Target;
  readonly trouble: Trouble;
  readonly rules: RuleSettings;
  /** Every rise a unit calls too fast, worked out when first asked for. */
  breaches(): readonly Trouble[];
}

/** One change of a dive that might be enough. */
export interface Try {
  /** The lever's figure after the change, in its unit. */
  readonly to: number;
  /** The whole changed script; undefined where the change says nothing. */
  script(): string | undefined;
  /** What would have been done, as in "Leaving the bottom 6 min earlier". */
  readonly doing: string;
  /** What it costs the dive: "6 min less at the bottom". */
  readonly cost: string;
  /** Why it is not to be had although it would be enough. */
  readonly but?: string;
}

/** The changes of one kind that a dive has room for. */
export interface Range {
  /** The lever's figure as the dive is. */
  readonly from: number;
  /** m, ft, min, m/min, ft/min, % or nothing. */
  readonly unit: string;
  /** From the smallest change on. */
  readonly tries: Iterable<Try>;
  /** What is said where none is enough: "Even leaving …, the stop would have been there". */
  readonly even: string;
  /** Whether a greater change is never worse than a lesser one, by proof: then the smallest enough is found by halving. */
  readonly ordered?: boolean;
  /** Nothing of the dive is changed before this: what is there by then can't be helped by any of them. */
  readonly changesFrom?: { readonly timeS: number; readonly called: string };
}

/** Why a dive has no room for such a change at all. */
export interface NoRoom {
  readonly none: string;
}

/** One kind of change that might have avoided a stop. Each is a file in `levers/` and a line in `levers/all.ts`. */
export interface Lever {
  readonly id: string;
  /** For a list, as in "Leave the bottom earlier". */
  readonly title: string;
  /** What it can bear on at all. */
  readonly avoids: readonly Target[];
  /** Whether it changes the whole day, and not one dive of it. */
  readonly wholeDay?: true;
  /** Whether it changes no climb, so that no rise can become too fast by it. */
  readonly keepsRates?: true;
  range(asked: Asked): Range | NoRoom;
}

/** Sensible steps of depth: half a metre, or a foot. */
export function depthGridM(system: UnitSystem): number {
  return system === 'metric' ? 0.5 : METRES_PER_FOOT;
}

/** The reader’s unit of depth. */
export function depthUnit(system: UnitSystem): 'm' | 'ft' {
  return system === 'metric' ? 'm' : 'ft';
}

/** A depth as a figure in the reader's unit. */
export function depthFigure(depthM: number, system: UnitSystem): number {
  return Math.round((system === 'metric' ? depthM : depthM / METRES_PER_FOOT) * 10) / 10;
}

/** A rate as a figure in the reader’s unit a minute, to a tenth. */
export function rateFigure(rateMMin: number, system: UnitSystem): number {
  return depthFigure(rateMMin, system);
}

/** Depths on the grid, shallower than one, from the deepest on and not above another. */
export function* gridUpwards(belowM: number, notAboveM: number, system: UnitSystem): Generator<number> {
  const grid = depthGridM(system);
  for (let steps = stepsTo(belowM, grid) - 1; steps * grid >= notAboveM - DUST && steps > 0; steps -= 1)
    yield Math.round(steps * grid * 1e6) / 1e6;
}

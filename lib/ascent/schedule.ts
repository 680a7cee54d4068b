import { sameGas, type Gas } from '../physics/gas';
import type { Compartments } from '../tissue/coefficients';
import type { GradientFactors } from '../dive/dive';
import { SAME_DEPTH_M } from './ceiling';
import type { Limits } from './limits';
import { levelAbove, levelM, stopAtOrBelow } from './stop-levels';
import { sharesOf, stretchOf, type Stretch } from './stretch';
import { TissuesUnderWay } from './tissues-under-way';

/** A stop the model requires on the way up. */
export interface Stop {
  readonly depthM: number;
  readonly minutes: number;
  readonly gas: Gas;
}

/** A piece of the ascent, in order: a change of depth or a stop, on one gas. */
export interface AscentPart {
  readonly fromM: number;
  readonly toM: number;
  readonly minutes: number;
  readonly gas: Gas;
}

export interface Schedule {
  /**
   * Required stops, deepest first; empty when a direct ascent is tolerated. One without end is not among them: the parts
   * lead to it. Where the way up begins with a way down, the depth gone down to is the first, with 0 min if it need not be
   * held. Of a stop under way, the minutes left.
   */
  readonly stops: readonly Stop[];
  /** The whole ascent with its stops, min; Infinity when no wait at some stop would ever be long enough. */
  readonly timeToSurfaceMin: number;
  readonly parts: readonly AscentPart[];
  /** The anchor of the line from low to high at the first instant, m; 0 while free, and where low is high. */
  readonly anchorM: number;
  /**
   * The anchor on arrival at the level above the first stop, m: it may have sunk on the way and during the wait, or be let
   * go (0). Undefined where no stop is left.
   */
  readonly onwardAnchorM: number | undefined;
}

/** Where an ascent is planned from. */
export interface AscentStart {
  readonly depthM: number;
  readonly gas: Gas;
  /** Sixteen tensions of each gas from `at` on, bar. */
  readonly nitrogenBar: Float64Array;
  readonly heliumBar: Float64Array;
  readonly at: number;
  /** The anchor reached so far, m; 0 where there is none. Tissues that are over their limit at the surface have one of their own. */
  readonly anchorM: number;
  /** How long the diver has been at this depth on this gas, min; a stop's minutes count from there. 0 unless told. */
  readonly stayedMin?: number;
}

export interface AscentSite {
  readonly compartments: Compartments;
  readonly surfaceBar: number;
  readonly barPerMetre: number;
  readonly lungOffsetBar: number;
}

/** Plans the ascent from a start, under other gradient factors than the planner's own if told. */
export type AscentPlanner = ReturnType<typeof ascentPlanner>;

/** Where there is nowhere further up to go: one level above the surface. */
const BEYOND_SURFACE = -1;

/** A stop that would last longer than this is taken never to end. */
const LONGEST_STOP_MIN = 48 * 60;

/** Parts of a unit smaller than this are rounding, min. */
const SAME_MOMENT_MIN = 1e-9;

/**
 * Plans ascents from one site under one set of limits. The schedule leaves each stop at the first whole multiple of the
 * stop rounding, counted from arrival, from which the climb to the next stop keeps every compartment within its
 * gradient-factor line at every instant: no stop can be a unit shorter. The anchor of the line sinks on the way up by the
 * same rule as in the dive. Each depth is breathed on the richest carried gas allowed there, from the first instant.
 *
 * What a climb or a wait does to the tissues does not depend on gradient factors, so others than those of the limits may
 * be tried with the same planner at little cost.
 */
export function ascentPlanner(limits: Limits, site: AscentSite) {
  const { plan, carried } = limits;
  const tissues = new TissuesUnderWay(site, plan.stopRoundingMin);
  const sharesAfter = sharesOf(site.compartments);
  const switchDepths = [...new Set(carried.map(({ fromM }) => fromM))].sort((one, other) => other - one);
  const waysUp = new WeakMap<Gas, Stretch[][]>();

  /** The carried gas richest in oxygen that may be breathed here, if it is richer than the one in use. */
  function bestGas(depthM: number, inUse: Gas): Gas {
    let best = inUse;
    for (const { gas, fromM } of carried) {
      if (fromM + SAME_DEPTH_M >= depthM && gas.o2 > best.o2) best = gas;
    }
    return best;
  }

  /** What is breathed on a way down to a depth: a gas in use that is not allowed there is left for the one dived with. */
  function gasDownTo(depthM: number, inUse: Gas): Gas {
    const tooDeep = carried.some(({ gas, fromM }) => sameGas(gas, inUse) && fromM + SAME_DEPTH_M < depthM);
    return bestGas(depthM, tooDeep ? limits.gas : inUse);
  }

  function stretch(fromM: number, toM: number, gas: Gas): Stretch {
    const minutes = Math.abs(fromM - toM) / plan.ascentMMin;
    return stretchOf({ fromM, toM, minutes, gas }, site, sharesAfter(minutes));
  }

  /** The way from one depth up to another, in a new stretch wherever a better gas may be breathed. */
  function climb(fromM: number, toM: number, gas: Gas): Stretch[] {
    const way: Stretch[] = [];
    let depthM = fromM;
    let breathed = gas;
    for (const switchM of switchDepths) {
      if (switchM >= depthM - SAME_DEPTH_M || switchM <= toM + SAME_DEPTH_M || bestGas(switchM, breathed) === breathed)
        continue;
      way.push(stretch(depthM, switchM, breathed));
      depthM = switchM;
      breathed = bestGas(switchM, breathed);
    }
    way.push(stretch(depthM, toM, breathed));
    return way;
  }

  /** The ways up from each stop on a gas, kept: they are the same every time. */
  function waysUpOn(gas: Gas): Stretch[][] {
    const known = waysUp.get(gas);
    if (known) return known;
    const made: Stretch[][] = [];
    waysUp.set(gas, made);
    return made;
  }

  /** Plans an ascent; with `onlyFirstStop` it is broken off at the first stop, whose minutes are then not worked out. */
  return function planAscent(
    start: AscentStart,
    gradientFactors: GradientFactors = limits.gradientFactors,
    onlyFirstStop = false,
  ): Schedule {
    const parts: AscentPart[] = [];
    const stops: Stop[] = [];
    let totalMin = 0;
    let depthM = start.depthM;
    let gas = bestGas(depthM, start.gas);
    let waysUpHere = waysUpOn(gas);
    let next = depthM > 0 ? levelAbove(depthM, plan) : BEYOND_SURFACE;
    let atStop = Math.abs(levelM(next + 1, plan) - depthM) <= SAME_DEPTH_M;
    if (atStop) depthM = levelM(next + 1, plan);
    tissues.begin(start, gradientFactors);
    const anchorM = gradientFactors.low === gradientFactors.high ? 0 : tissues.line.anchorBar / site.barPerMetre;
    let goneDown = false;
    let onwardAnchorM: number | undefined;

    function take(way: readonly Stretch[]): void {
      for (const { part } of way) {
        parts.push(part);
        totalMin += part.minutes;
        depthM = part.toM;
      }
    }

    function breathe(wanted: Gas): void {
      if (wanted === gas) return;
      gas = wanted;
      waysUpHere = waysUpOn(gas);
    }

    function goDownTo(level: number): void {
      const toM = levelM(level, plan);
      breathe(gasDownTo(toM, gas));
      const way = [stretch(depthM, toM, gas)];
      tissues.take(way);
      take(way);
      next = level - 1;
      atStop = true;
      goneDown = true;
    }

    const done = (timeToSurfaceMin: number): Schedule => ({ stops, parts, timeToSurfaceMin, anchorM, onwardAnchorM });

    // Above the ceiling already: the way up begins with the way back down to the stop at or next below it.
    // At the surface a hair above it is above it too: a bound diver there owes a stop.
    for (let ceilingM = ceilingNow(); isAbove(ceilingM); ceilingM = ceilingNow()) {
      const level = stopAtOrBelow(ceilingM, plan);
      // Always on down: at the stop itself, a hair above the ceiling, it would never come to an end.
      goDownTo(levelM(level, plan) > depthM ? level : level + 1);
    }
    // A stop's minutes count on the gas it is made on: with a richer one to go over to they begin now.
    let heldMin = atStop && !goneDown && gas === start.gas ? (start.stayedMin ?? 0) : 0;
    while (next !== BEYOND_SURFACE) {
      const nextM = levelM(next, plan);
      const way = atStop ? (waysUpHere[next] ??= climb(depthM, nextM, gas)) : climb(depthM, nextM, gas);
      const restOfUnitMin = heldMin > 0 ? unitLeftMin(way, heldMin) : 0;
      heldMin = 0;
      const opens = restOfUnitMin === 0 && tissues.takeIfWithin(way);
      if (!opens && !atStop) {
        goDownTo(next + 1);
        continue;
      }
      if (opens && goneDown) stops.push({ depthM, minutes: 0, gas });
      if (!opens) {
        if (onlyFirstStop) {
          stops.push({ depthM, minutes: NaN, gas });
          return done(NaN);
        }
        if (restOfUnitMin > 0) tissues.wait(way[0]!, restOfUnitMin);
        const minutes =
          restOfUnitMin > 0 && tissues.takeIfWithin(way)
            ? restOfUnitMin
            : restOfUnitMin + tissues.takeAfterWait(way, LONGEST_STOP_MIN);
        if (minutes === Infinity) return done(Infinity);
        stops.push({ depthM, minutes, gas });
        if (stops.length === 1) onwardAnchorM = tissues.line.bound ? tissues.line.anchorBar / site.barPerMetre : 0;
        parts.push({ fromM: depthM, toM: depthM, minutes, gas });
        totalMin += minutes;
      }
      goneDown = false;
      take(way);
      breathe(bestGas(depthM, way.at(-1)!.part.gas));
      next -= 1;
      atStop = true;
    }
    return done(totalMin);

    function isAbove(ceilingM: number): boolean {
      return depthM < ceilingM - (depthM > 0 ? SAME_DEPTH_M : 0);
    }

    function ceilingNow(): number {
      if (!tissues.line.bound) return 0;
      return tissues.ceilingBar() / site.barPerMetre;
    }

    /**
     * What is left of the unit under way of a stop that has been held for so long; 0 where none is. It is under way if the
     * climb was not open when it began, whether or not it is by now, or if it was and no longer is.
     */
    function unitLeftMin(way: readonly Stretch[], stayedMin: number): number {
      const unitMin = plan.stopRoundingMin;
      const units = Math.floor(stayedMin / unitMin + SAME_MOMENT_MIN);
      const goneMin = stayedMin - units * unitMin;
      if (goneMin <= SAME_MOMENT_MIN) return 0;
      const comeBack = tissues.remember();
      tissues.goBack(way[0]!, goneMin);
      const wasOpen = tissues.takeIfWithin(way);
      comeBack();
      if (!wasOpen) return unitMin - goneMin;
      const isOpen = tissues.takeIfWithin(way);
      comeBack();
      return isOpen ? 0 : unitMin - goneMin;
    }
  };
}

import type { Gas } from '../physics/gas';
import type { Compartments } from '../tissue/coefficients';
import type { GradientFactors, Settings } from '../dive/dive';
import { ceilingAtGf, ceilingOnLine, firstStopM, gradientFactorAt, SAME_DEPTH_M, type Load } from './ceiling';
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
  /** Required stops, deepest first; empty when a direct ascent is tolerated. */
  readonly stops: readonly Stop[];
  /** The whole ascent with its stops, min; Infinity when no wait at some stop would ever be long enough. */
  readonly timeToSurfaceMin: number;
  readonly parts: readonly AscentPart[];
  /** Where the line from low to high begins, m; 0 without one. */
  readonly firstStopM: number;
}

/** Where an ascent is planned from. */
export interface AscentStart {
  readonly depthM: number;
  readonly gas: Gas;
  /** Sixteen tensions of each gas from `at` on, bar. */
  readonly nitrogenBar: Float64Array;
  readonly heliumBar: Float64Array;
  readonly at: number;
  /** The first stop, if an ascent under way has fixed it already, m; 0 otherwise. */
  readonly fixedFirstStopM: number;
}

export interface AscentSite {
  readonly compartments: Compartments;
  readonly surfaceBar: number;
  readonly barPerMetre: number;
  readonly lungOffsetBar: number;
}

/** Where there is nowhere further up to go: one level above the surface. */
const BEYOND_SURFACE = -1;

/** A stop that would last longer than this is taken never to end. */
const LONGEST_STOP_MIN = 48 * 60;

/**
 * Plans ascents from one site under one set of settings. The schedule leaves each stop at the first whole multiple of
 * the stop rounding from which the climb to the next stop keeps every compartment within its gradient-factor line: no
 * stop can be a unit shorter.
 *
 * What a climb or a wait does to the tissues does not depend on gradient factors, so others than the settings' may be
 * tried with the same planner at little cost.
 */
export function ascentPlanner(settings: Pick<Settings, 'plan' | 'gradientFactors' | 'carried'>, site: AscentSite) {
  const { plan, carried } = settings;
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

  function stretch(fromM: number, toM: number, gas: Gas): Stretch {
    const minutes = Math.abs(fromM - toM) / plan.ascentMMin;
    return stretchOf({ fromM, toM, minutes, gas }, site, sharesAfter(minutes));
  }

  /** The way from one depth to another, in a new stretch wherever a better gas may be breathed. */
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

  return function planAscent(
    start: AscentStart,
    gradientFactors: GradientFactors = settings.gradientFactors,
  ): Schedule {
    const { nitrogenBar, heliumBar, at } = start;
    const { compartments, surfaceBar, barPerMetre } = site;
    const load: Load = { compartments, surfaceBar, barPerMetre, nitrogenBar, heliumBar, at };
    const ceilingAtLowM = ceilingAtGf(load, gradientFactors.low).depthM;
    const fixedM = start.depthM <= start.fixedFirstStopM + SAME_DEPTH_M ? start.fixedFirstStopM : 0;
    const firstStop = Math.max(fixedM, firstStopM(ceilingAtLowM, plan));
    const parts: AscentPart[] = [];
    const stops: Stop[] = [];
    let totalMin = 0;
    let depthM = start.depthM;
    let gas = bestGas(depthM, start.gas);
    let waysUpHere = waysUpOn(gas);
    let next = depthM > 0 ? levelAbove(depthM, plan) : BEYOND_SURFACE;
    let atStop = Math.abs(levelM(next + 1, plan) - depthM) <= SAME_DEPTH_M;
    if (atStop) depthM = levelM(next + 1, plan);
    // Above the ceiling already: the way up begins with the way back down to the nearest stop below it.
    const ceilingM = depthM < ceilingAtLowM ? ceilingOnLine(load, gradientFactors, firstStop).depthM : 0;
    let goesDownTo = depthM < ceilingM - SAME_DEPTH_M ? stopAtOrBelow(ceilingM, plan) : 0;
    tissues.begin(start);
    while (next !== BEYOND_SURFACE || goesDownTo > 0) {
      let way: readonly Stretch[];
      if (goesDownTo > 0) {
        way = climb(depthM, levelM(goesDownTo, plan), gas);
        tissues.take(way);
        next = goesDownTo;
        goesDownTo = 0;
      } else {
        const nextM = levelM(next, plan);
        way = atStop ? (waysUpHere[next] ??= climb(depthM, nextM, gas)) : climb(depthM, nextM, gas);
        const gf = gradientFactorAt(nextM, firstStop, gradientFactors);
        const ambientBar = surfaceBar + nextM * barPerMetre;
        if (!tissues.takeIfWithin(way, ambientBar, gf)) {
          if (!atStop) {
            goesDownTo = next + 1;
            continue;
          }
          const minutes = tissues.takeAfterWait(way, ambientBar, gf, LONGEST_STOP_MIN);
          if (minutes === Infinity) return { stops, parts, timeToSurfaceMin: Infinity, firstStopM: firstStop };
          stops.push({ depthM, minutes, gas });
          parts.push({ fromM: depthM, toM: depthM, minutes, gas });
          totalMin += minutes;
        }
      }
      let breathed = gas;
      for (const { part } of way) {
        parts.push(part);
        totalMin += part.minutes;
        depthM = part.toM;
        breathed = bestGas(depthM, part.gas);
      }
      if (breathed !== gas) {
        gas = breathed;
        waysUpHere = waysUpOn(gas);
      }
      next -= 1;
      atStop = true;
    }
    return { stops, parts, timeToSurfaceMin: totalMin, firstStopM: firstStop };
  };
}

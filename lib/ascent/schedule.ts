import type { Gas } from '../physics/gas';
import { limitBar, mixedCoefficient } from '../tissue/limit';
import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';
import type { Settings } from '../dive/dive';
import { breathedAt } from './breathed';
import { ceilingAtGf, ceilingOnLine, firstStopM, gradientFactorAt, SAME_DEPTH_M, type Load } from './ceiling';

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

/** A stop that would last longer than this is taken never to end. */
const LONGEST_STOP_MIN = 48 * 60;
/** Rounding allowance when a tension is held against its limit, bar. */
const ROUNDING_BAR = 1e-12;

/** One stretch of a climb on one gas, with what each compartment needs to be carried along it. */
interface Stretch extends AscentPart {
  readonly nitrogenStartBar: number;
  readonly nitrogenEndBar: number;
  readonly heliumStartBar: number;
  readonly heliumEndBar: number;
  readonly nitrogenLeft: Float64Array;
  readonly heliumLeft: Float64Array;
}

/**
 * Plans ascents from one site under one set of settings. The schedule leaves each stop at the first whole multiple of
 * the stop rounding from which the climb to the next stop keeps every compartment within its gradient-factor line: no
 * stop can be a unit shorter.
 */
export function ascentPlanner(settings: Pick<Settings, 'plan' | 'gradientFactors' | 'carried'>, site: AscentSite) {
  const { plan, gradientFactors, carried } = settings;
  const { nitrogenK, heliumK, nitrogenA, nitrogenB, heliumA, heliumB } = site.compartments;
  const nitrogen = new Float64Array(COMPARTMENTS);
  const helium = new Float64Array(COMPARTMENTS);
  const here: Load = { ...site, nitrogenBar: nitrogen, heliumBar: helium, at: 0 };
  const switchDepths = [...new Set(carried.map(({ fromM }) => fromM))].sort((one, other) => other - one);
  const leftAfter = new Map<number, { nitrogen: Float64Array; helium: Float64Array }>();

  function stretch(fromM: number, toM: number, gas: Gas, minutes: number): Stretch {
    let left = leftAfter.get(minutes);
    if (!left) {
      left = { nitrogen: nitrogenK.map((k) => Math.exp(-k * minutes)), helium: heliumK.map((k) => Math.exp(-k * minutes)) };
      leftAfter.set(minutes, left);
    }
    const start = breathedAt(site, gas, site.surfaceBar + fromM * site.barPerMetre);
    const end = breathedAt(site, gas, site.surfaceBar + toM * site.barPerMetre);
    return {
      fromM,
      toM,
      gas,
      minutes,
      nitrogenStartBar: start.nitrogenBar,
      nitrogenEndBar: end.nitrogenBar,
      heliumStartBar: start.heliumBar,
      heliumEndBar: end.heliumBar,
      nitrogenLeft: left.nitrogen,
      heliumLeft: left.helium,
    };
  }

  /** The carried gas richest in oxygen that may be breathed here, if it is richer than the one in use. */
  function bestGas(depthM: number, inUse: Gas): Gas {
    let best = inUse;
    for (const { gas, fromM } of carried) {
      if (fromM + SAME_DEPTH_M >= depthM && gas.o2 > best.o2) best = gas;
    }
    return best;
  }

  /** The way from one depth to another, in a new stretch wherever a better gas may be breathed. */
  function climb(fromM: number, toM: number, gas: Gas): Stretch[] {
    const stretches: Stretch[] = [];
    let depthM = fromM;
    let breathed = gas;
    for (const switchM of switchDepths) {
      if (switchM >= depthM - SAME_DEPTH_M || switchM <= toM + SAME_DEPTH_M || bestGas(switchM, breathed) === breathed) continue;
      stretches.push(stretch(depthM, switchM, breathed, (depthM - switchM) / plan.ascentMMin));
      depthM = switchM;
      breathed = bestGas(switchM, breathed);
    }
    stretches.push(stretch(depthM, toM, breathed, Math.abs(depthM - toM) / plan.ascentMMin));
    return stretches;
  }

  function carry(stretches: readonly Stretch[]): void {
    for (const part of stretches) {
      for (let c = 0; c < COMPARTMENTS; c += 1) {
        nitrogen[c] = tensionAfter(nitrogen[c]!, part.nitrogenStartBar, part.nitrogenEndBar, part.minutes, nitrogenK[c]!, part.nitrogenLeft[c]!);
        helium[c] = tensionAfter(helium[c]!, part.heliumStartBar, part.heliumEndBar, part.minutes, heliumK[c]!, part.heliumLeft[c]!);
      }
    }
  }

  /** Whether one compartment would be within `gf` at the end of a climb. */
  function keepsLine(c: number, way: readonly Stretch[], ambientBar: number, gf: number): boolean {
    let n = nitrogen[c]!;
    let h = helium[c]!;
    for (const part of way) {
      n = tensionAfter(n, part.nitrogenStartBar, part.nitrogenEndBar, part.minutes, nitrogenK[c]!, part.nitrogenLeft[c]!);
      h = tensionAfter(h, part.heliumStartBar, part.heliumEndBar, part.minutes, heliumK[c]!, part.heliumLeft[c]!);
    }
    const a = mixedCoefficient(n, h, nitrogenA[c]!, heliumA[c]!);
    const b = mixedCoefficient(n, h, nitrogenB[c]!, heliumB[c]!);
    return n + h <= limitBar(a, b, gf, ambientBar) + ROUNDING_BAR;
  }

  return function planAscent(start: AscentStart): Schedule {
    for (let c = 0; c < COMPARTMENTS; c += 1) {
      nitrogen[c] = start.nitrogenBar[start.at + c]!;
      helium[c] = start.heliumBar[start.at + c]!;
    }
    const parts: AscentPart[] = [];
    const stops: Stop[] = [];
    const fixedM = start.depthM <= start.fixedFirstStopM + SAME_DEPTH_M ? start.fixedFirstStopM : 0;
    const firstStop = Math.max(fixedM, firstStopM(ceilingAtGf(here, gradientFactors.low).depthM, plan));
    let depthM = start.depthM;
    let gas = bestGas(depthM, start.gas);
    /** The compartment that last forbade a climb is asked first: it mostly forbids the next one too. */
    let strictest = 0;

    const go = (way: readonly Stretch[], toM: number) => {
      carry(way);
      for (const { fromM, toM: endM, minutes, gas: breathed } of way) parts.push({ fromM, toM: endM, minutes, gas: breathed });
      gas = bestGas(toM, way.at(-1)!.gas);
      depthM = toM;
    };
    const tolerates = (way: readonly Stretch[], toM: number) => {
      const gf = gradientFactorAt(toM, firstStop, gradientFactors);
      const ambientBar = site.surfaceBar + toM * site.barPerMetre;
      for (let asked = 0; asked < COMPARTMENTS; asked += 1) {
        const c = (strictest + asked) % COMPARTMENTS;
        if (!keepsLine(c, way, ambientBar, gf)) {
          strictest = c;
          return false;
        }
      }
      return true;
    };
    const told = (timeToSurfaceMin: number): Schedule => ({ stops, timeToSurfaceMin, parts, firstStopM: firstStop });

    const ceilingM = ceilingOnLine(here, gradientFactors, firstStop).depthM;
    if (depthM < ceilingM - SAME_DEPTH_M) {
      // Above the ceiling already: the way up begins with the way back down to the nearest stop below it.
      const stopM = stopAtOrBelowM(ceilingM, plan);
      go(climb(depthM, stopM, gas), stopM);
    }
    while (depthM > 0) {
      const nextM = nextLevelM(depthM, plan);
      const way = climb(depthM, nextM, gas);
      if (tolerates(way, nextM)) {
        go(way, nextM);
        continue;
      }
      const stopM = stopAtOrBelowM(depthM, plan);
      if (stopM > depthM + SAME_DEPTH_M) {
        go(climb(depthM, stopM, gas), stopM);
        continue;
      }
      const wait = [stretch(depthM, depthM, gas, plan.stopRoundingMin)];
      let minutes = 0;
      do {
        carry(wait);
        minutes += plan.stopRoundingMin;
        if (minutes > LONGEST_STOP_MIN) return told(Infinity);
      } while (!tolerates(way, nextM));
      stops.push({ depthM, minutes, gas });
      parts.push({ fromM: depthM, toM: depthM, minutes, gas });
    }
    return told(parts.reduce((sum, part) => sum + part.minutes, 0));
  };
}

/** Haldane's and Schreiner's solutions for one tension, given what is left of a difference after the time: e^(−k·t). */
function tensionAfter(p: number, startBar: number, endBar: number, minutes: number, k: number, left: number): number {
  if (startBar === endBar) return endBar + (p - endBar) * left;
  const lag = (endBar - startBar) / minutes / k;
  return endBar - lag + (p - startBar + lag) * left;
}

/** The next depth to climb to: the next shallower stop, never between the last stop and the surface. */
function nextLevelM(depthM: number, plan: Settings['plan']): number {
  if (depthM <= plan.lastStopM + SAME_DEPTH_M) return 0;
  const level = (Math.ceil(depthM / plan.stopStepM - SAME_DEPTH_M) - 1) * plan.stopStepM;
  return Math.max(level, plan.lastStopM);
}

/** The stop depth at or next below a depth. */
function stopAtOrBelowM(depthM: number, plan: Settings['plan']): number {
  if (depthM <= plan.lastStopM + SAME_DEPTH_M) return plan.lastStopM;
  return Math.ceil(depthM / plan.stopStepM - SAME_DEPTH_M) * plan.stopStepM;
}


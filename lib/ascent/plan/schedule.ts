import type { Gas } from '../../physics/gas';
import type { Compartments } from '../../tissue/coefficients';
import type { GradientFactors } from '../../dive/dive';
import { SAME_DEPTH_M } from '../ceiling';
import type { Limits } from '../limits';
import { levelAbove, levelM, stopAtOrBelow } from './stop-levels';
import type { Stretch } from './stretch';
import { TissuesUnderWay } from './tissues-under-way';
import { WaysUp, type PlannedWith } from './ways-up';

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

/** Where there is nowhere further up to go: one level above the surface. */
const BEYOND_SURFACE = -1;

/** A stop that would last longer than this is taken never to end. */
const LONGEST_STOP_MIN = 48 * 60;

/** Parts of a unit smaller than this are rounding, min. */
const SAME_MOMENT_MIN = 1e-9;

/**
 * Plans the ascent from a start, under other gradient factors than the planner's own if told; with `onlyFirstStop` it is
 * broken off at the first stop, whose minutes are then not worked out.
 */
export type AscentPlanner = (
  start: AscentStart,
  gradientFactors?: GradientFactors,
  onlyFirstStop?: boolean,
) => Schedule;

/** The last making of a site. Gradient factors are none of its business, so that planners under others share it. */
const makings = new WeakMap<AscentSite, Making>();

/**
 * Plans ascents from one site under one set of limits. The schedule leaves each stop at the first whole multiple of the
 * stop rounding, counted from arrival, from which the climb to the next stop keeps every compartment within its
 * gradient-factor line at every instant: no stop can be a unit shorter. The anchor of the line sinks on the way up by the
 * same rule as in the dive. Each depth is breathed on the richest carried gas allowed there, from the first instant.
 *
 * Whoever follows the plan finds at any moment of it what is left of it, once a way down that it may begin with is over.
 * That way leads to one stop, told by where the diver is when it begins: above the ceiling, or between two stop depths with
 * the climb not open. Asked anew on the way, a plan begins where the diver is then: it may find the climb open, or the
 * ceiling risen past a stop depth, and takes it. Otherwise it leads to the same stop, and never to a deeper one.
 *
 * What a climb or a wait does to the tissues does not depend on gradient factors, so others than those of the limits may
 * be tried with the same planner at little cost.
 */
export function ascentPlanner(limits: Limits, site: AscentSite): AscentPlanner {
  let making = makings.get(site);
  if (!making?.isWith(limits)) makings.set(site, (making = new Making(limits, site)));
  const mine = making;
  return (start, gradientFactors = limits.gradientFactors, onlyFirstStop = false) =>
    mine.plan(start, gradientFactors, onlyFirstStop);
}

/** A schedule while it is made; begun anew for each. */
class Making {
  private readonly tissues: TissuesUnderWay;
  private readonly ways: WaysUp;
  private parts: AscentPart[] = [];
  private stops: Stop[] = [];
  private totalMin = 0;
  private depthM = 0;
  private gas: Gas;
  /** The level the way leads to next. */
  private next = 0;
  private atStop = false;
  private goneDown = false;

  constructor(
    private readonly limits: PlannedWith,
    private readonly site: AscentSite,
  ) {
    this.tissues = new TissuesUnderWay(site, limits.plan.stopRoundingMin);
    this.ways = new WaysUp(limits, site);
    this.gas = limits.gas;
  }

  /** Whether other limits plan with the very same rate, levels and gases. */
  isWith({ plan, carried, gas }: PlannedWith): boolean {
    const { limits } = this;
    return limits.plan === plan && limits.carried === carried && limits.gas === gas;
  }

  plan(start: AscentStart, gradientFactors: GradientFactors, onlyFirstStop: boolean): Schedule {
    const { tissues, ways, site } = this;
    this.begin(start, gradientFactors);
    const { parts, stops } = this;
    const anchorM = gradientFactors.low === gradientFactors.high ? 0 : tissues.line.anchorBar / site.barPerMetre;
    let onwardAnchorM: number | undefined;
    this.goDownToCeiling();
    // A stop's minutes count on the gas it is made on: with a richer one to go over to they begin now.
    let heldMin = this.atStop && !this.goneDown && this.gas === start.gas ? (start.stayedMin ?? 0) : 0;
    while (this.next !== BEYOND_SURFACE) {
      const way = this.wayUp();
      const restOfUnitMin = heldMin > 0 ? this.unitLeftMin(way, heldMin) : 0;
      heldMin = 0;
      const opens = restOfUnitMin === 0 && tissues.takeIfWithin(way);
      if (!opens && !this.atStop) {
        this.goDownTo(this.next + 1);
        continue;
      }
      const { depthM, gas } = this;
      if (opens && this.goneDown) stops.push({ depthM, minutes: 0, gas });
      if (!opens) {
        if (onlyFirstStop) {
          stops.push({ depthM, minutes: NaN, gas });
          return { stops, parts, timeToSurfaceMin: NaN, anchorM, onwardAnchorM };
        }
        const minutes = this.waitFor(way, restOfUnitMin);
        if (minutes === Infinity) return { stops, parts, timeToSurfaceMin: Infinity, anchorM, onwardAnchorM };
        stops.push({ depthM, minutes, gas });
        if (stops.length === 1) onwardAnchorM = tissues.line.bound ? tissues.line.anchorBar / site.barPerMetre : 0;
        parts.push({ fromM: depthM, toM: depthM, minutes, gas });
        this.totalMin += minutes;
      }
      this.goneDown = false;
      this.take(way);
      this.gas = ways.bestGas(this.depthM, way.at(-1)!.part.gas);
      this.next -= 1;
      this.atStop = true;
    }
    return { stops, parts, timeToSurfaceMin: this.totalMin, anchorM, onwardAnchorM };
  }

  private begin(start: AscentStart, gradientFactors: GradientFactors): void {
    const { plan } = this.limits;
    this.parts = [];
    this.stops = [];
    this.totalMin = 0;
    this.depthM = start.depthM;
    this.gas = this.ways.bestGas(start.depthM, start.gas);
    this.next = start.depthM > 0 ? levelAbove(start.depthM, plan) : BEYOND_SURFACE;
    const levelHereM = levelM(this.next + 1, plan);
    this.atStop = Math.abs(levelHereM - start.depthM) <= SAME_DEPTH_M;
    if (this.atStop) this.depthM = levelHereM;
    this.goneDown = false;
    this.tissues.begin(start, gradientFactors);
  }

  private wayUp(): readonly Stretch[] {
    const { next, gas, depthM } = this;
    return this.atStop ? this.ways.upTo(next, gas) : this.ways.climb(depthM, levelM(next, this.limits.plan), gas);
  }

  /** Waits until a way is open and takes it: how long, min, at least the rest of the unit under way. */
  private waitFor(way: readonly Stretch[], restOfUnitMin: number): number {
    const { tissues } = this;
    if (restOfUnitMin > 0) {
      tissues.wait(way[0]!, restOfUnitMin);
      if (tissues.takeIfWithin(way)) return restOfUnitMin;
    }
    return restOfUnitMin + tissues.takeAfterWait(way, LONGEST_STOP_MIN);
  }

  private take(way: readonly Stretch[]): void {
    for (const { part } of way) {
      this.parts.push(part);
      this.totalMin += part.minutes;
      this.depthM = part.toM;
    }
  }

  private goDownTo(level: number): void {
    const { ways } = this;
    const toM = levelM(level, this.limits.plan);
    this.gas = ways.gasDownTo(toM, this.gas);
    const way = [ways.stretch(this.depthM, toM, this.gas)];
    this.tissues.take(way);
    this.take(way);
    this.next = level - 1;
    this.atStop = true;
    this.goneDown = true;
  }

  /**
   * Above the ceiling already, the way up begins with the way back down to the stop at or next below it. At the surface a
   * hair above it is above it too: a bound diver there owes a stop.
   */
  private goDownToCeiling(): void {
    const { plan } = this.limits;
    for (;;) {
      const ceilingM = this.tissues.ceilingBar() / this.site.barPerMetre;
      if (this.depthM >= ceilingM - (this.depthM > 0 ? SAME_DEPTH_M : 0)) return;
      const level = stopAtOrBelow(ceilingM, plan);
      // Always on down: at the stop itself, a hair above the ceiling, it would never come to an end.
      this.goDownTo(levelM(level, plan) > this.depthM ? level : level + 1);
    }
  }

  /**
   * What is left of the unit under way of a stop that has been held for so long; 0 where none is. It is under way if the
   * climb was not open when it began, whether or not it is by now, or if it was and no longer is.
   */
  private unitLeftMin(way: readonly Stretch[], stayedMin: number): number {
    const { tissues } = this;
    const unitMin = this.limits.plan.stopRoundingMin;
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
}

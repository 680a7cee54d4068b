import { FASTEST_M_MIN } from '../../dive/script/leg-rate';
import { tensionErrorBar } from './tension-error';
import type { GasSwitch } from './record';
import type { Compartments } from '../../tissue/coefficients';

/** Samples of a depth profile in order of time, and the gases breathed along it. */
export interface Profile {
  readonly timeS: Float64Array;
  readonly depthM: Float64Array;
  readonly switches: readonly GasSwitch[];
}

/** How far a simplified profile may be from the recorded one. */
export interface Closeness {
  /** At every sample, in the inert gas of every compartment, bar. */
  readonly tissueBar: number;
  /** At every sample, m. */
  readonly depthM: number;
}

/** What is left: the samples between which the depth runs straight, and how far that is from the record. */
export interface Simplified {
  /** Indices of the samples kept, the first and the last among them. */
  readonly kept: Uint32Array;
  readonly depthErrorM: number;
  readonly tissueErrorBar: number;
}

export const DEFAULT_CLOSENESS: Closeness = { tissueBar: 0.005, depthM: 0.5 };
/** Samples on a straight line to within so much say nothing of their own, m. */
const ON_THE_LINE_M = 1e-9;
const SHRINK = 0.7;
/** A little less than is allowed, so that rounding cannot make it more. */
const BELOW_ROUNDING = 0.999;
/** Samples looked past the last good end of a line: a bound on the work for a profile made to be hard. */
const FARTHEST_LOOK = 1000;

/**
 * Leaves out samples so that the tissues computed from the rest differ by no more than is allowed, at every recorded
 * sample. Samples on a straight line always go, since that changes nothing; when more than `keepUpTo` are left, the
 * depth may stray too, as far as the tissues allow. `pins` are samples to keep whatever happens.
 */
export function simplify(
  profile: Profile,
  site: { readonly barPerMetre: number; readonly compartments: Compartments },
  {
    closeness = DEFAULT_CLOSENESS,
    keepUpTo = 0,
    pins = [],
  }: { closeness?: Closeness; keepUpTo?: number; pins?: readonly number[] } = {},
): Simplified {
  const runs = (toleranceM: number) => reachable(profile, straightRuns(profile, toleranceM, pins));
  const measured = (kept: Uint32Array, giveUpAbove: Closeness): Simplified => ({
    kept,
    ...tensionErrorBar(profile, kept, site, giveUpAbove),
  });
  const exact = runs(ON_THE_LINE_M);
  if (exact.length > keepUpTo) {
    // Widest first: one that strays too far is given up early, and only the one that will do is gone through to its end.
    for (const toleranceM of laddered(closeness, site.barPerMetre)) {
      const tried = measured(runs(toleranceM), closeness);
      if (tried.tissueErrorBar <= closeness.tissueBar && tried.depthErrorM <= closeness.depthM) return tried;
    }
  }
  return measured(exact, { tissueBar: Infinity, depthM: Infinity });
}

/**
 * Depth tolerances to try, the widest first, m. A tension follows the pressure breathed and never overtakes it, so one
 * that is itself worth no more than the tissues may be off is sure to do, and closes the list.
 */
function laddered({ tissueBar, depthM }: Closeness, barPerMetre: number): number[] {
  const sureM = Math.min(depthM, tissueBar / barPerMetre) * BELOW_ROUNDING;
  const tolerances: number[] = [];
  for (let toleranceM = depthM; toleranceM > sureM; toleranceM *= SHRINK) tolerances.push(toleranceM);
  return [...tolerances, sureM];
}

/**
 * One pass that draws each line as far as it can: from the last sample kept, the slopes that pass every sample since
 * within the tolerance are a cone, and the farthest sample inside the cone ends the line. Each line keeps within the
 * tolerance of all it replaces.
 */
function straightRuns({ timeS, depthM }: Profile, toleranceM: number, pins: readonly number[]): Uint32Array {
  const { length } = timeS;
  const pinned = new Uint8Array(length);
  for (const pin of pins) pinned[pin] = 1;
  const kept: number[] = [0];
  let from = 0;
  while (from < length - 1) {
    let steepestUp = -Infinity;
    let steepestDown = Infinity;
    let end = from + 1;
    for (let i = from + 1; i < length; i += 1) {
      const span = timeS[i]! - timeS[from]!;
      const change = depthM[i]! - depthM[from]!;
      const slope = change / span;
      if (slope >= steepestUp && slope <= steepestDown) end = i;
      const allowed = toleranceM / span;
      if (slope - allowed > steepestUp) steepestUp = slope - allowed;
      if (slope + allowed < steepestDown) steepestDown = slope + allowed;
      if (steepestUp > steepestDown || pinned[i] === 1 || i - end > FARTHEST_LOOK) break;
    }
    kept.push(end);
    from = end;
  }
  return Uint32Array.from(kept);
}

/** Leaves out samples that lie so far from the one before, by the coarse steps of a sensor, that no script could say it. */
function reachable({ timeS, depthM }: Profile, kept: Uint32Array): Uint32Array {
  const tooFast = (from: number, to: number) =>
    Math.abs(depthM[to]! - depthM[from]!) * 60 > FASTEST_M_MIN * (timeS[to]! - timeS[from]!);
  if (!kept.some((index, i) => i > 0 && tooFast(kept[i - 1]!, index))) return kept;
  const last = kept[kept.length - 1]!;
  const left: number[] = [];
  for (const index of kept) {
    if (left.length === 0 || !tooFast(left.at(-1)!, index)) left.push(index);
    else if (index === last) {
      while (left.length > 1 && tooFast(left.at(-1)!, index)) left.pop();
      left.push(index);
    }
  }
  return Uint32Array.from(left);
}

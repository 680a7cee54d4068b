import type { Step } from '../dive/dive';
import { nearestM, type SteerRun } from './run';
import { stepTo } from '../dive/step-to';

/** A stretch at one depth that lasts this long is a stay, s; a shorter one is part of going up or down. */
const STAYS_FROM_S = 5;

/** A stay of a run: between two of its points, at one depth, m. */
interface Level {
  readonly from: number;
  readonly to: number;
  readonly depthM: number;
  /** The longest stretch of it at exactly that depth, s. */
  readonly longestS: number;
}

/**
 * A run as the steps a person would have written: what was level is a stay, small corrections of it within it, and of the
 * legs between stays as few as keep every depth within `withinM`, m. Depths are multiples of `everyM`; times are those of
 * the run.
 */
export function cleanSteps(run: SteerRun, withinM: number, everyM: number): Step[] {
  const { timesS, depthsM } = run;
  const legsWithinM = Math.max(0, withinM - everyM / 2);
  const corners: { timeS: number; depthM: number }[] = [];
  const put = (index: number, depthM: number) => corners.push({ timeS: timesS[index]!, depthM });
  const between = (from: number, to: number) => {
    const depths = depthsM.map((depthM, index) => {
      if (index === from) return corners.at(-1)!.depthM;
      const level = index === to ? levels.find((one) => one.from === to) : undefined;
      return level ? level.depthM : depthM;
    });
    for (const index of bendsOf(timesS, depths, from, to, legsWithinM)) put(index, nearestM(depthsM[index]!, everyM));
  };
  const levels = levelsOf(run, withinM);
  put(0, levels[0]?.from === 0 ? levels[0].depthM : depthsM[0]!);
  let at = 0;
  for (const { from, to, depthM } of levels) {
    if (from > at) {
      between(at, from);
      put(from, depthM);
    }
    put(to, depthM);
    at = to;
  }
  const last = timesS.length - 1;
  if (last > at) {
    between(at, last);
    put(last, nearestM(depthsM[last]!, everyM));
  }
  return stepsBetween(corners);
}

/** Where a run is level; stretches at nearly one depth, with nothing beyond it between them, are one. */
function levelsOf({ timesS, depthsM }: SteerRun, withinM: number): Level[] {
  const levels: Level[] = [];
  for (let i = 0; i + 1 < timesS.length; i += 1) {
    const longestS = timesS[i + 1]! - timesS[i]!;
    if (depthsM[i] !== depthsM[i + 1] || longestS < STAYS_FROM_S) continue;
    const level = { from: i, to: i + 1, depthM: depthsM[i]!, longestS };
    const before = levels.at(-1);
    const joined = before && joinedLevel(before, level, depthsM, withinM);
    if (joined) levels[levels.length - 1] = joined;
    else levels.push(level);
  }
  return levels;
}

/** Two stays as one, if no depth between them is further off than `withinM`; whoever surfaces has surfaced. */
function joinedLevel(one: Level, other: Level, depthsM: readonly number[], withinM: number): Level | undefined {
  const { depthM, longestS } = one.longestS >= other.longestS ? one : other;
  const near = depthsM
    .slice(one.from, other.to + 1)
    .every((at) => (at === 0) === (depthM === 0) && Math.abs(at - depthM) <= withinM);
  return near ? { from: one.from, to: other.to, depthM, longestS } : undefined;
}

/** Points between two at which a line bends: from it, no depth is further off than `withinM` (Douglas and Peucker, 1973). */
function bendsOf(
  timesS: readonly number[],
  depthsM: readonly number[],
  from: number,
  to: number,
  withinM: number,
): number[] {
  const bends: number[] = [];
  const spans: [number, number][] = [[from, to]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [start, end] = span;
    let worstM = withinM;
    let bend = -1;
    for (let i = start + 1; i < end; i += 1) {
      const share = (timesS[i]! - timesS[start]!) / (timesS[end]! - timesS[start]!);
      const offM = Math.abs(depthsM[i]! - (depthsM[start]! + share * (depthsM[end]! - depthsM[start]!)));
      // Whoever surfaces has surfaced, however short it was.
      const surfaced = depthsM[i] === 0 && depthsM[start] !== 0 && depthsM[end] !== 0;
      if (offM > worstM || (surfaced && bend < 0)) {
        worstM = Math.max(worstM, offM);
        bend = i;
      }
    }
    if (bend < 0) continue;
    bends.push(bend);
    spans.push([start, bend], [bend, end]);
  }
  return bends.sort((one, other) => one - other);
}

/** Steps from corner to corner; stays that follow one another are one. */
function stepsBetween(corners: readonly { readonly timeS: number; readonly depthM: number }[]): Step[] {
  const steps: Step[] = [];
  for (let i = 1; i < corners.length; i += 1) {
    const [from, to] = [corners[i - 1]!, corners[i]!];
    const durationS = to.timeS - from.timeS;
    if (durationS <= 0) continue;
    const step = stepTo(from.depthM, to.depthM, durationS);
    const before = steps.at(-1);
    if (step.kind === 'stay' && before?.kind === 'stay')
      steps[steps.length - 1] = { kind: 'stay', durationS: before.durationS + durationS };
    else steps.push(step);
  }
  return steps;
}

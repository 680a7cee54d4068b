import type { Dive, Step } from '@/lib/dive/dive';
import { stepLines } from '@/lib/dive/script/plain-script';

/** A dive steered by hand, as it has gone so far: depth, m, at times in seconds since the start. */
export interface SteerRun {
  readonly timesS: readonly number[];
  readonly depthsM: readonly number[];
}

/** Fastest the lever takes the diver up or down, m/min. */
export const FULL_LEVER_M_MIN = 40;
const DEEPEST_STEERED_M = 100;

export const FRESH_RUN: SteerRun = { timesS: [0], depthsM: [0] };

/** Speed for a lever from −1 (up) to 1 (down), m/min: gentle near the middle, full at the ends. */
export function leverRateMMin(lever: number): number {
  return Math.sign(lever) * Math.abs(lever) ** 1.6 * FULL_LEVER_M_MIN;
}

/** Frames closer together than this are kept as one point, s. */
const POINT_EVERY_S = 0.5;

/** The run some seconds later, the lever held where it is. */
export function steered(run: SteerRun, lever: number, seconds: number): SteerRun {
  const timeS = run.timesS.at(-1)! + seconds;
  const depthM = Math.min(Math.max(0, run.depthsM.at(-1)! + (leverRateMMin(lever) * seconds) / 60), DEEPEST_STEERED_M);
  const before = run.timesS.at(-2);
  const kept = before !== undefined && timeS - before < POINT_EVERY_S ? -1 : run.timesS.length;
  return { timesS: [...run.timesS.slice(0, kept), timeS], depthsM: [...run.depthsM.slice(0, kept), depthM] };
}

/** How far the steps of a run may be from what was steered, m: less than a gauge shows. */
const SIMPLIFIED_WITHIN_M = 0.1;

/** The run as steps of a script: as few legs as keep its depths, each a whole number of seconds. */
export function stepsOfRun(run: SteerRun): Step[] {
  const kept = cornersOf(run, SIMPLIFIED_WITHIN_M);
  const steps: Step[] = [];
  let timeS = 0;
  let depthM = 0;
  for (const index of kept.slice(1)) {
    const toS = Math.round(run.timesS[index]!);
    const toM = Math.round(run.depthsM[index]! * 10) / 10;
    if (toS <= timeS) continue;
    const durationS = toS - timeS;
    const last = steps.at(-1);
    if (toM === depthM && last?.kind === 'stay')
      steps[steps.length - 1] = { kind: 'stay', durationS: last.durationS + durationS };
    else if (toM === depthM) steps.push({ kind: 'stay', durationS });
    else steps.push({ kind: toM > depthM ? 'descend' : 'ascend', toM, durationS });
    timeS = toS;
    depthM = toM;
  }
  return steps;
}

/** The dive so far, which may still be under water. */
export function diveOfRun(settings: Dive['settings'], run: SteerRun): Dive {
  return { settings, steps: stepsOfRun(run), lines: [] };
}

/** Rate of the way up that ends a run stopped under water, m/min. */
const WAY_UP_M_MIN = 9;

/** The run as a script under the header of another: what was typed before its first step is kept. */
export function scriptOfRun(dive: Dive, run: SteerRun): string {
  return scriptOfSteps(dive, stepsOfRun(run));
}

/** A run's steps, which may end under water, as a script under the header of another. */
export function scriptOfSteps(dive: Dive, runSteps: readonly Step[]): string {
  const first = dive.lines.findIndex(({ stands }) => stands.as === 'step');
  const header = (first < 0 ? dive.lines : dive.lines.slice(0, first)).map(({ text }) => text);
  while (header.at(-1)?.trim() === '') header.pop();
  const lastM = runSteps.reduce((depthM, step) => ('toM' in step ? step.toM : depthM), 0);
  const wayUp: Step[] =
    lastM > 0 ? [{ kind: 'ascend', toM: 0, durationS: Math.ceil((lastM / WAY_UP_M_MIN) * 60) }] : [];
  return [...header, '', '# steered by hand', ...stepLines([...runSteps, ...wayUp]), ''].join('\n');
}

/** Douglas and Peucker's choice of points (1973): the fewest found from which no depth is further off than `withinM`. */
function cornersOf({ timesS, depthsM }: SteerRun, withinM: number): number[] {
  const keep = new Set([0, timesS.length - 1]);
  const spans: [number, number][] = [[0, timesS.length - 1]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [from, to] = span;
    let worst = withinM;
    let at = -1;
    for (let i = from + 1; i < to; i += 1) {
      const share = (timesS[i]! - timesS[from]!) / (timesS[to]! - timesS[from]!);
      const off = Math.abs(depthsM[i]! - (depthsM[from]! + share * (depthsM[to]! - depthsM[from]!)));
      if (off > worst) {
        worst = off;
        at = i;
      }
    }
    if (at >= 0) {
      keep.add(at);
      spans.push([from, at], [at, to]);
    }
  }
  return [...keep].sort((one, other) => one - other);
}
